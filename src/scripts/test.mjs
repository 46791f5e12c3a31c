// npm test: sets up, then format, lint, types, unit and reference tests, build, browser tests.
// Stops at the first step that fails. `npm test -- unit` runs only the steps named.
import { bin, ensureBrowser, ensureBuilt, ensureInstalled, ensurePostgres, run } from './setup.mjs';

ensureInstalled();
const node = process.execPath;
/** @type {{ name: string, does: () => number }[]} */
const steps = [
	{ name: 'format', does: () => run(node, [bin('prettier', 'bin/prettier.cjs'), '--check', '.']) },
	{ name: 'lint', does: () => run(node, [bin('eslint', 'bin/eslint.js'), '.', '--max-warnings', '0']) },
	{
		name: 'types',
		does: () =>
			run(node, [bin('@sveltejs/kit', 'svelte-kit.js'), 'sync']) ||
			run(node, [
				bin('svelte-check', 'bin/svelte-check'),
				'--tsconfig',
				'./tsconfig.json',
				'--fail-on-warnings',
			]) ||
			run(node, [bin('typescript', 'bin/tsc'), '-p', 'src/lib/domain/tsconfig.json']),
	},
	{
		name: 'unit',
		does: () => {
			const env = { NODE_ENV: 'test', POSTGRES_BIN: ensurePostgres() };
			return run(node, [bin('vitest', 'vitest.mjs'), 'run'], { env });
		},
	},
	{
		name: 'browser',
		does: () => {
			const browser = ensureBrowser();
			ensureBuilt();
			return run(node, [bin('@playwright/test', 'cli.js'), 'test', '-c', 'test/playwright.config.ts'], {
				env: { CHROMIUM_PATH: browser },
			});
		},
	},
];

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !steps.some((step) => step.name === name));
if (unknown.length) {
	process.stderr.write(`No step "${unknown[0]}". Steps: ${steps.map((step) => step.name).join(', ')}\n`);
	process.exit(2);
}
for (const { name, does } of steps) {
	if (wanted.length && !wanted.includes(name)) continue;
	const started = Date.now();
	process.stderr.write(`\n=== ${name}\n`);
	const code = does();
	process.stderr.write(
		`=== ${name}: ${code === 0 ? 'good' : 'FAILED'} (${Math.round((Date.now() - started) / 1000)} s)\n`,
	);
	if (code !== 0) process.exit(code);
}
