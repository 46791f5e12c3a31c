import { spawnSync } from 'node:child_process';
import {
	chmodSync,
	mkdirSync,
	mkdtempSync,
	readFileSync,
	readdirSync,
	rmSync,
	utimesSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir, uptime } from 'node:os';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { screenNote } from '../../../src/lib/server/screens/screenFiles';
import type { ScreenReport } from '../../../src/lib/server/screens/screenRegistry';

/** as the server writes it */
const HUNG = {
	name: 'wall',
	key: 'wall',
	health: 'hung',
	age_s: 20,
	beat: { page: '0123456789abcdef', uptime_s: 900 },
} as ScreenReport;
const DEPLOY = path.resolve(import.meta.dirname, '../../../src/deploy');
const read = (name: string) => readFileSync(path.join(DEPLOY, name), 'utf8');

const folders: string[] = [];
afterEach(() => folders.splice(0).forEach((folder) => rmSync(folder, { recursive: true, force: true })));

/** Programs that only write down how they were called, in a folder of their own. */
function pretend(programs: Record<string, string>): { PATH: string; HOME: string; calls: () => string[] } {
	const folder = mkdtempSync(path.join(tmpdir(), 'deploy-'));
	folders.push(folder);
	const log = path.join(folder, 'calls');
	writeFileSync(log, '');
	for (const [name, body] of Object.entries(programs)) {
		writeFileSync(
			path.join(folder, name),
			`#!/bin/sh\nfor one in ${name} "$@"; do printf '%s\\n' "$one"; done >>${log}\n${body}\n`,
		);
		chmodSync(path.join(folder, name), 0o755);
	}
	return {
		PATH: `${folder}:/usr/bin:/bin`,
		HOME: folder,
		calls: () => readFileSync(log, 'utf8').trim().split('\n'),
	};
}
const sh = (script: string, args: string[], env: Record<string, string>) =>
	spawnSync('sh', [path.join(DEPLOY, script), ...args], { encoding: 'utf8', env, timeout: 20_000 });

describe('screen.sh', () => {
	it('waits for the exhibit, then opens it under the name of the screen', () => {
		// away twice, then there
		const { calls, ...env } = pretend({
			curl: 'n=$(cat "$HOME/n" 2>/dev/null || echo 0); echo $((n + 1)) >"$HOME/n"; [ "$n" -ge 2 ]',
			sleep: '',
			chromium: '',
		});
		const { status, stderr } = sh('screen.sh', ['wall-2'], env);
		expect(status).toBe(0);
		expect(stderr.match(/Waiting for/g)).toHaveLength(1);
		const said = calls();
		expect(said.filter((word) => word === 'curl')).toHaveLength(3);
		const browser = said.slice(said.indexOf('chromium'));
		expect(browser).toContain('--kiosk');
		expect(browser.at(-1)).toBe('http://localhost:4173/?screen=wall-2');
		expect(browser).toContain(`--user-data-dir=${env.HOME}/.local/state/tooth-table/wall-2`);
	});

	it.each([[''], ['Wall'], ['a b'], ['../wall'], ['a&b'], ['$(id)']])('refuses the name "%s"', (name) => {
		const { calls, ...env } = pretend({ curl: '', chromium: '' });
		const { status, stderr } = sh('screen.sh', [name], env);
		expect(status).toBe(2);
		expect(stderr).toContain('small letters, digits and hyphens');
		expect(calls()).toEqual(['']);
	});

	it('has no switch that weakens the browser', () => {
		// the last two are for tests only (content/public/common/content_switches.cc)
		for (const bad of [
			'no-sandbox',
			'disable-web-security',
			'ignore-certificate-errors',
			'remote-debugging',
			'disable-domain-blocking-for-3d-apis',
			'disable-gpu-process-crash-limit',
		])
			expect(read('screen.sh')).not.toMatch(new RegExp(`^\\s*--${bad}`, 'm'));
	});
});

describe('set-up.sh', () => {
	it.each([
		[['--screen', 'Big Wall'], 1, 'a name has small letters'],
		[['--screen', 'wall', '--address', 'server:4173'], 1, 'begin it with http'],
		[['--address', 'http://server:4173'], 1, '--address needs --screen'],
		[['--wrong'], 2, 'sudo src/deploy/set-up.sh'],
	])('refuses %j', (args, code, words) => {
		const { status, stderr } = sh('set-up.sh', [...args, '--dry-run'], { PATH: '/usr/bin:/bin' });
		expect(status).toBe(code);
		expect(stderr).toContain(words);
	});

	it('puts every unit of this folder in place', () => {
		const units = readdirSync(DEPLOY).filter((name) => /\.(service|timer)$/.test(name));
		expect(units.length).toBeGreaterThanOrEqual(6);
		for (const unit of units) expect(read('set-up.sh')).toContain(unit);
	});
});

/** `Key=value` lines by section; a key may come more than once. */
function unit(name: string): Map<string, string[]> {
	const found = new Map<string, string[]>();
	let section = '';
	for (const line of read(name).split('\n')) {
		if (/^\s*(#|$)/.test(line)) continue;
		const head = /^\[(\w+)\]$/.exec(line);
		if (head) section = head[1];
		else {
			const pair = /^([A-Za-z]+)=(.*)$/.exec(line);
			if (!pair || !section) throw new Error(`${name}: ${line}`);
			const key = `${section}.${pair[1]}`;
			found.set(key, [...(found.get(key) ?? []), pair[2]]);
		}
	}
	return found;
}

describe('units', () => {
	it('the server is hardened, but not in ways that break V8', () => {
		const server = unit('tooth-table.service');
		expect(server.get('Service.ProtectSystem')).toEqual(['strict']);
		expect(server.get('Service.NoNewPrivileges')).toEqual(['yes']);
		expect(server.get('Service.Restart')).toEqual(['always']);
		expect(server.has('Service.MemoryDenyWriteExecute')).toBe(false);
		// a burst of faults must not leave the gallery dark
		expect(server.get('Unit.StartLimitIntervalSec')).toEqual(['0']);
	});

	it('the browser is not: its own sandbox needs namespaces', () => {
		const screen = unit('tooth-table-screen@.service');
		const hardening =
			/^Service\.(NoNewPrivileges|Restrict|Protect|Private|SystemCall|CapabilityBoundingSet|MemoryDeny)/;
		expect([...screen.keys()].filter((key) => hardening.test(key))).toEqual([]);
	});

	it('what they start is here', () => {
		for (const name of readdirSync(DEPLOY).filter((file) => file.endsWith('.service')))
			for (const command of unit(name).get('Service.ExecStart') ?? [])
				for (const [, script] of command.matchAll(/\/opt\/tooth-table\/src\/deploy\/([\w.-]+)/g))
					expect(readdirSync(DEPLOY)).toContain(script);
	});
});

describe('chromium-policy.json', () => {
	const policy = JSON.parse(read('chromium-policy.json'));
	it('lets one address in and nothing out', () => {
		expect(policy.URLBlocklist).toEqual(['*']);
		expect(policy.URLAllowlist).toEqual(['http://localhost:4173']);
		expect(policy).toMatchObject({
			PrintingEnabled: false,
			DownloadRestrictions: 3,
			AllowFileSelectionDialogs: false,
			DeveloperToolsAvailability: 2,
		});
	});
});

describe('watch-screens.sh', () => {
	/** One screen that beat `age_min` ago, on a machine whose browser has run for long. */
	function watch(
		age_min: number,
		{ name = 'wall', server = 0, active = 0, started_us = -1e9, note = '{}' } = {},
	) {
		const { calls, ...env } = pretend({
			curl: `exit ${server}`,
			systemctl: `case "$1" in is-active) exit ${active} ;; show) echo ${started_us} ;; esac`,
		});
		const screens = path.join(env.HOME, 'screens');
		mkdirSync(screens);
		const file = path.join(screens, `${name}.json`);
		writeFileSync(file, note);
		const then = new Date(Date.now() - age_min * 60_000);
		utimesSync(file, then, then);
		const { status, stderr } = sh('watch-screens.sh', [], { ...env, DATA_DIR: env.HOME });
		expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
		return calls().join(' ').includes('restart');
	}
	it('starts the browser of a silent screen again', () => expect(watch(10)).toBe(true));
	it('starts the browser of a page that hangs again, however fresh the note', () =>
		expect(watch(0, { note: JSON.stringify(screenNote(HUNG, Date.now())) })).toBe(true));
	it('leaves a screen that beats', () => expect(watch(1)).toBe(false));
	it('starts the browser of a screen anew that the server calls hung', () =>
		expect(watch(1, { note: '{"name":"wall","health":"hung","restart_browser":true}' })).toBe(true));
	it('leaves the screens of other machines', () => expect(watch(10, { active: 3 })).toBe(false));
	it('does nothing while the server is away', () => expect(watch(10, { server: 7 })).toBe(false));
	it('gives a fresh browser its time', () =>
		expect(watch(10, { started_us: Math.round(uptime() * 1e6) })).toBe(false));
	it('passes over names that no screen can have', () => expect(watch(10, { name: 'a b' })).toBe(false));
	it('no screen, nothing to do', () => {
		const { calls, ...env } = pretend({ curl: '', systemctl: '' });
		expect(sh('watch-screens.sh', [], { ...env, DATA_DIR: env.HOME }).status).toBe(0);
		expect(calls().join(' ')).not.toContain('systemctl');
	});
});
