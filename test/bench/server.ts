import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { ROOT } from '../../src/scripts/setup.mjs';

export interface Served {
	url: string;
	dataDir: string;
	/** of the process */
	pid: number;
	/** from spawn to the first answer with an exhibit, ms */
	started_ms: number;
	stop(): Promise<void>;
}

/** Starts the built exhibit as `npm start` does, and waits until it has an exhibit to show. */
export async function serve(options: {
	contentDir: string;
	port: number;
	dataDir?: string;
}): Promise<Served> {
	const dataDir = options.dataDir ?? (await mkdtemp(path.join(os.tmpdir(), 'tooth-table-bench-')));
	const started = performance.now();
	const child: ChildProcess = spawn(process.execPath, ['src/scripts/start.mjs'], {
		cwd: ROOT,
		stdio: ['ignore', 'ignore', 'inherit'],
		env: {
			...process.env,
			PORT: String(options.port),
			HOST: '127.0.0.1',
			CONTENT_DIR: options.contentDir,
			DATA_DIR: dataDir,
		},
	});
	const url = `http://localhost:${options.port}`;
	for (;;) {
		if (child.exitCode !== null) throw new Error(`serve: the server ended with ${child.exitCode}`);
		try {
			const health = (await (await fetch(`${url}/healthz`)).json()) as { exhibit: string | null };
			if (health.exhibit) break;
		} catch {
			// not listening yet
		}
		await new Promise((resolve) => setTimeout(resolve, 25));
	}
	return {
		url,
		dataDir,
		pid: child.pid!,
		started_ms: performance.now() - started,
		async stop() {
			const ended = new Promise((resolve) => child.once('exit', resolve));
			child.kill('SIGTERM');
			await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 3000))]);
			child.kill('SIGKILL');
			if (!options.dataDir) await rm(dataDir, { recursive: true, force: true });
		},
	};
}
