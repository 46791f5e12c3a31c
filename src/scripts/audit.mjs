// npm run audit: asks the package registry for known weak spots of what the exhibit runs on (not of its tools).
// Exit 1 if one is high or critical. A registry that cannot be asked is told and fails nothing: a museum's network
// may be closed, and the check must not hang on it.
import { spawnSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import { ROOT } from './setup.mjs';

/**
 * What npm's report (version 2, `npm audit --json`) means.
 * @param {string} printed
 * @returns {{ asked: boolean, bad: string[], line: string }}
 */
export function readAudit(printed) {
	let report;
	try {
		report = JSON.parse(printed);
	} catch {
		return { asked: false, bad: [], line: 'npm gave no report.' };
	}
	if (!report?.vulnerabilities || !report.metadata?.vulnerabilities)
		return {
			asked: false,
			bad: [],
			line: `The registry could not be asked: ${report?.message ?? 'no reason given'}`,
		};
	const all = /** @type {{ name: string, severity: string, range?: string }[]} */ (
		Object.values(report.vulnerabilities)
	);
	const bad = all
		.filter(({ severity }) => severity === 'high' || severity === 'critical')
		.map(({ name, severity, range }) => `${name} ${range ?? ''}: ${severity}`.replace(/ +/g, ' '));
	const line = bad.length
		? `${bad.length} packages with a weak spot that is high or critical.`
		: `No weak spot known that is high or critical (${all.length} lesser ones).`;
	return { asked: true, bad, line };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
	const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], {
		cwd: ROOT,
		encoding: 'utf8',
		timeout: 60_000,
		shell: process.platform === 'win32',
	});
	const { bad, line } = readAudit(stdout ?? '');
	for (const one of bad) process.stderr.write(`${one}\n`);
	process.stderr.write(`${line}\n`);
	process.exit(bad.length ? 1 : 0);
}
