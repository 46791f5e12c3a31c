/**
 * Writes the whole visitor side as files: `exportExhibit.ts OUT_DIR`. Starts the built server for itself, asks it for every
 * page, and writes what it answers. CONTENT_DIR and DATA_DIR as for the exhibit.
 * Exit code 0 when it is written, 1 when not, 2 when it was called wrongly.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { createServer, type AddressInfo } from 'node:net';
import { join, relative, resolve, sep } from 'node:path';
import { collectExport } from './collectExport';
import { danglingIn } from './danglingIn';
import { earlierExport, writeExport } from './writeExport';

const USAGE = 'Usage: npm run export -- OUT_DIR';
const BUILD = resolve('build');
/** A large museum's scans, none of them prepared yet. */
const READY_WITHIN_ms = 60 * 60_000;

async function main(): Promise<number> {
	const args = process.argv.slice(2);
	if (args.length !== 1 || args[0].startsWith('-')) {
		console.error(USAGE);
		return 2;
	}
	const outDir = resolve(args[0]);
	const content = resolve(process.env.CONTENT_DIR || 'content');
	if (!relative(outDir, content).startsWith('..') || !relative(content, outDir).startsWith('..')) {
		console.error(`${outDir} and the content folder may not lie in one another.`);
		return 1;
	}
	const earlier = await earlierExport(outDir);
	if (!earlier.ok) {
		console.error(earlier.problem);
		return 1;
	}
	const began = Date.now();
	const server = await startServer();
	try {
		const { origin } = server;
		const health = (await (await fetch(`${origin}/healthz`)).json()) as { problems: { errors: number } };
		if (health.problems.errors > 0)
			console.error(
				`The content has ${health.problems.errors} errors: what is broken is left out, or written as it last was. npm run content:check names them.`,
			);
		const { files, exhibit, code, languages, pages } = await collectExport({
			get: (path) => fetch(`${origin}${path}`, { redirect: 'manual' }),
			program: await programFiles(),
		});
		const dangling = danglingIn(files);
		if (dangling.length > 0) {
			console.error(
				['Nothing was written: what pages name is not there.', ...dangling.slice(0, 20)].join('\n'),
			);
			return 1;
		}
		const written = await writeExport(outDir, { files, exhibit, code });
		if (!written.ok) {
			console.error(written.problem);
			return 1;
		}
		const { list, bytes, changed, gone } = written.value;
		console.log(
			`${outDir}: ${list.files.length} files, ${(bytes / 1e6).toFixed(1)} MB, ${pages} pages in ${languages.join(', ')}; ${changed} new or changed, ${gone} gone; version ${list.version}; ${((Date.now() - began) / 1000).toFixed(1)} s`,
		);
		return 0;
	} finally {
		await server.stop();
	}
}

/** The program as a browser gets it; the copies that are already packed are the web server's business. */
async function programFiles(): Promise<Map<string, Uint8Array>> {
	const folder = join(BUILD, 'client');
	const files = new Map<string, Uint8Array>();
	for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
		if (!entry.isFile() || /\.(br|gz)$/.test(entry.name)) continue;
		const full = join(entry.parentPath, entry.name);
		files.set(relative(folder, full).split(sep).join('/'), new Uint8Array(await readFile(full)));
	}
	return files;
}

async function startServer(): Promise<{ origin: string; stop: () => Promise<void> }> {
	const port = await freePort();
	const origin = `http://127.0.0.1:${port}`;
	const child: ChildProcess = spawn(process.execPath, [join(BUILD, 'index.js')], {
		stdio: ['ignore', 'ignore', 'inherit'],
		env: {
			...process.env,
			NODE_ENV: 'production',
			EXHIBIT_EXPORT: '1',
			HOST: '127.0.0.1',
			PORT: String(port),
		},
	});
	const ended = new Promise<void>((done) => child.once('exit', () => done()));
	const stop = async () => {
		child.kill('SIGTERM');
		const timer = setTimeout(() => child.kill('SIGKILL'), 5_000);
		await ended;
		clearTimeout(timer);
	};
	const until = Date.now() + READY_WITHIN_ms;
	while (Date.now() < until) {
		if (child.exitCode !== null) throw new Error('The server could not be started: the lines above say why');
		const there = await fetch(`${origin}/healthz`).catch(() => null);
		if (there) return { origin, stop };
		await new Promise((wait) => setTimeout(wait, 100));
	}
	await stop();
	throw new Error('The server was not ready within an hour');
}

const freePort = (): Promise<number> =>
	new Promise((done, refuse) => {
		const probe = createServer();
		probe.once('error', refuse);
		probe.listen(0, '127.0.0.1', () => {
			const { port } = probe.address() as AddressInfo;
			probe.close(() => done(port));
		});
	});

process.exitCode = await main().catch((cause: unknown) => {
	console.error(cause instanceof Error ? cause.message : String(cause));
	return 1;
});
