// A PostgreSQL of our own for the tests: in a folder that goes away, on a port of its own, and never as root.
import { spawn, spawnSync } from 'node:child_process';
import {
	chmodSync,
	chownSync,
	cpSync,
	existsSync,
	mkdtempSync,
	readFileSync,
	rmSync,
	symlinkSync,
} from 'node:fs';
import net from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';

/** PostgreSQL refuses to run as root; `nobody` is on every system. */
const NOBODY = 65534;

/**
 * Sets a database up; `start` and `kill` may be called again and again.
 * @param {string} bin folder that holds `initdb` and `postgres`
 */
export async function makePostgres(bin) {
	const isRoot = process.getuid?.() === 0;
	const as = isRoot ? { uid: NOBODY, gid: NOBODY } : {};
	const folder = mkdtempSync(path.join(tmpdir(), 'tooth-table-postgres-'));
	chmodSync(folder, 0o755);
	if (isRoot) chownSync(folder, NOBODY, NOBODY);
	const programs = isRoot && bin.includes('node_modules') ? copied(bin, folder) : bin;
	const data = path.join(folder, 'data');
	const env = { PATH: process.env.PATH ?? '', LC_ALL: 'C', TZ: 'UTC', HOME: folder };
	const made = spawnSync(
		path.join(programs, 'initdb'),
		['-D', data, '-U', 'table', '-A', 'trust', '-E', 'UTF8', '--no-locale', '--no-sync'],
		{ ...as, env, encoding: 'utf8', cwd: folder },
	);
	if (made.status !== 0) {
		rmSync(folder, { recursive: true, force: true });
		throw new Error(`makePostgres: initdb failed: ${made.stderr || String(made.error)}`);
	}
	const port = await freePort();
	const args = [
		'-D',
		data,
		'-p',
		String(port),
		'-c',
		'listen_addresses=127.0.0.1',
		'-c',
		`unix_socket_directories=${folder}`,
	];
	// a crash of the program loses nothing that was written to files: only a power cut needs fsync
	args.push('-c', 'fsync=off', '-c', 'max_connections=60', '-c', 'log_min_messages=fatal');
	/** @type {import('node:child_process').ChildProcess | null} */
	let shell = null;

	/** Waits until the database answers, or nobody does. @param {boolean} up */
	async function until(up) {
		const end = Date.now() + 30_000;
		while ((await answers(port)) !== up) {
			if (Date.now() > end) throw new Error(`makePostgres: not ${up ? 'up' : 'down'} after 30 s`);
			await wait(20);
		}
	}
	async function start() {
		// the shell lives as long as its input: when the tests end, however they end, the database goes too
		shell = spawn(
			'/bin/sh',
			[
				'-c',
				'"$0" "$@" & server=$!; cat >/dev/null; kill -QUIT $server; wait $server',
				path.join(programs, 'postgres'),
				...args,
			],
			{ ...as, env, cwd: folder, stdio: ['pipe', 'ignore', 'ignore'] },
		);
		await until(true);
	}
	/** At once, as in a power cut: nothing is finished. */
	async function kill() {
		if (!shell) return;
		const ended = new Promise((resolve) => shell?.once('exit', resolve));
		shell.stdin?.end();
		await ended;
		shell = null;
		await until(false);
	}
	async function stop() {
		await kill();
		rmSync(folder, { recursive: true, force: true });
	}
	return {
		port,
		start,
		kill,
		stop,
		url: (database = 'postgres') => `postgres://table@127.0.0.1:${port}/${database}`,
	};
}

/** Programs of a package, where `nobody` may read them; a package cannot hold links, so they are made here. @param {string} bin @param {string} folder */
function copied(bin, folder) {
	const from = path.dirname(bin);
	const to = path.join(folder, 'programs');
	cpSync(from, to, { recursive: true, verbatimSymlinks: true });
	const list = path.join(from, 'pg-symlinks.json');
	/** @type {{ source: string, target: string }[]} */
	const links = existsSync(list) ? JSON.parse(readFileSync(list, 'utf8')) : [];
	for (const { source, target } of links) {
		const link = path.join(to, path.relative('native', target));
		if (!existsSync(link)) symlinkSync(path.relative(path.dirname(target), source), link);
	}
	return path.join(to, 'bin');
}

/** @returns {Promise<number>} */
function freePort() {
	return new Promise((resolve, reject) => {
		const probe = net.createServer();
		probe.once('error', reject);
		probe.listen(0, '127.0.0.1', () => {
			const at = probe.address();
			probe.close(() => resolve(typeof at === 'object' && at ? at.port : 0));
		});
	});
}

/** Whether a database answers there; while it starts or mends itself it does not. @param {number} port @returns {Promise<boolean>} */
async function answers(port) {
	const client = new pg.Client({ host: '127.0.0.1', port, user: 'table', database: 'postgres' });
	client.on('error', () => undefined);
	try {
		await client.connect();
		await client.query('select 1');
		return true;
	} catch {
		return false;
	} finally {
		await client.end().catch(() => undefined);
	}
}
