import { chmodSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { liveSession, openStaff, secretOf, type Staff } from '../../../../src/lib/server/staff/getStaff';
import { changePassphrase, setFirstPassphrase, setPin } from '../../../../src/lib/server/staff/setSecret';
import { trySecret } from '../../../../src/lib/server/staff/trySecret';

const FIRST = 'four teeth on a table';
const SECOND = 'another drawer of teeth';
const CHEAP = { n: 16, r: 1, p: 1 };
let folder: string;
const said: string[] = [];
const logger = { info: () => undefined, warn: (message: string) => void said.push(message) };
const open = (passphraseFile?: string): Staff => openStaff(folder, logger, passphraseFile ?? '', CHEAP);
const record = () => path.join(folder, 'staff.json');
const begin = (staff: Staff, kind: 'desk' | 'corner') =>
	staff.sessions.begin({ kind, gallery: false, under: secretOf(staff, kind)! });

beforeEach(() => {
	folder = mkdtempSync(path.join(tmpdir(), 'staff-'));
	said.length = 0;
});
afterEach(() => {
	chmodSync(folder, 0o700);
	rmSync(folder, { recursive: true, force: true });
});

describe('passphrase', () => {
	it('is set once, kept hashed and for its owner alone, and opens', async () => {
		const staff = open();
		expect(staff.file.read()).toEqual({ is: 'unset' });
		expect(await trySecret(staff, 'desk', FIRST, 'a')).toEqual({ ok: false, code: 'unset' });
		expect(await setFirstPassphrase(staff, 'short')).toEqual({ ok: false, code: 'short' });
		expect(await setFirstPassphrase(staff, FIRST)).toEqual({ ok: true });
		expect(await setFirstPassphrase(staff, SECOND)).toEqual({ ok: false, code: 'already' });
		expect(readFileSync(record(), 'utf8')).not.toContain('teeth');
		expect(statSync(record()).mode & 0o777).toBe(0o600);
		expect(await trySecret(staff, 'desk', `${FIRST}\n`, 'a')).toMatchObject({ ok: true });
		expect(await trySecret(staff, 'desk', SECOND, 'a')).toEqual({ ok: false, code: 'wrong' });
		// after a restart
		expect(await trySecret(open(), 'desk', FIRST, 'a')).toMatchObject({ ok: true });
	});

	it('of two set at the same time is one', async () => {
		const staff = open();
		const answers = await Promise.all([setFirstPassphrase(staff, FIRST), setFirstPassphrase(staff, SECOND)]);
		expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
		const opens = await Promise.all([FIRST, SECOND].map((one) => trySecret(staff, 'desk', one, 'a')));
		expect(opens.map(({ ok }) => ok)).toEqual(answers.map(({ ok }) => ok));
	});

	it('changed, or deleted with its file, ends every session', async () => {
		const staff = open();
		await setFirstPassphrase(staff, FIRST);
		const token = begin(staff, 'desk');
		expect(liveSession(staff, token)).not.toBeNull();
		expect(await changePassphrase(staff, SECOND)).toEqual({ ok: true });
		expect(liveSession(staff, token)).toBeNull();
		const next = begin(staff, 'desk');
		expect(liveSession(staff, next)).not.toBeNull();
		await staff.sessions.written();
		rmSync(record());
		expect(staff.file.read()).toEqual({ is: 'unset' });
		expect(liveSession(staff, next)).toBeNull();
		expect(await changePassphrase(staff, FIRST)).toEqual({ ok: false, code: 'unset' });
	});

	it('in a file that cannot be read lets nobody in and is not written over', async () => {
		for (const text of ['', '{', '{"version":2}', '{"version":1,"passphrase":{"kind":"scrypt","n":1}}']) {
			writeFileSync(record(), text);
			const staff = open();
			expect(staff.file.read()).toEqual({ is: 'damaged' });
			expect(await trySecret(staff, 'desk', FIRST, 'a')).toEqual({ ok: false, code: 'damaged' });
			expect(await setFirstPassphrase(staff, FIRST)).toEqual({ ok: false, code: 'damaged' });
			expect(readFileSync(record(), 'utf8')).toBe(text);
		}
	});

	it('is taken from a file that the machine hands in, where none is set', async () => {
		const handed = path.join(folder, 'passphrase.txt');
		writeFileSync(handed, `${FIRST}\r\nnot this line\n`);
		const staff = open(handed);
		await staff.ready;
		expect(await trySecret(staff, 'desk', FIRST, 'a')).toMatchObject({ ok: true });
		await changePassphrase(staff, SECOND);
		const again = open(handed);
		await again.ready;
		expect(await trySecret(again, 'desk', SECOND, 'a')).toMatchObject({ ok: true });
		expect(said).toEqual([]);
	});

	it('is not taken from a file that is too short or not there, and the terminal says so', async () => {
		const handed = path.join(folder, 'passphrase.txt');
		writeFileSync(handed, 'short\n');
		await open(handed).ready;
		await open(path.join(folder, 'none.txt')).ready;
		expect(said).toEqual([expect.stringContaining('too short'), expect.stringContaining('none.txt')]);
		expect(open().file.read()).toEqual({ is: 'unset' });
	});

	it('makes guessing wait, whichever page the guesses come from', async () => {
		const staff = open();
		await setFirstPassphrase(staff, FIRST);
		for (let i = 0; i < 4; i += 1)
			expect(await trySecret(staff, 'desk', SECOND, 'a')).toEqual({ ok: false, code: 'wrong' });
		expect(await trySecret(staff, 'desk', SECOND, 'a')).toEqual({ ok: false, code: 'wait', wait_s: 5 });
		// even the right one, until the wait is over
		expect(await trySecret(staff, 'desk', FIRST, 'a')).toMatchObject({ ok: false, code: 'wait' });
		expect(await trySecret(staff, 'desk', FIRST, 'b')).toMatchObject({ ok: true });
	});
});

describe('PIN', () => {
	it('opens the corner only, has its own limit, and can be taken away', async () => {
		const staff = open();
		expect(await setPin(staff, '120934')).toEqual({ ok: false, code: 'unset' });
		await setFirstPassphrase(staff, FIRST);
		expect(await trySecret(staff, 'corner', '120934', 'a')).toEqual({ ok: false, code: 'unset' });
		expect(await setPin(staff, '12345')).toEqual({ ok: false, code: 'digits' });
		expect(await setPin(staff, '123456')).toEqual({ ok: false, code: 'easy' });
		expect(await setPin(staff, '120934')).toEqual({ ok: true });
		expect(await trySecret(staff, 'corner', '120934', 'a')).toMatchObject({ ok: true });
		expect(await trySecret(staff, 'desk', '120934', 'b')).toEqual({ ok: false, code: 'wrong' });
		const token = begin(staff, 'corner');
		expect(liveSession(staff, token)).toMatchObject({ kind: 'corner' });
		for (let i = 0; i < 4; i += 1)
			expect(await trySecret(staff, 'corner', '111222', 'a')).toEqual({ ok: false, code: 'wrong' });
		expect(await trySecret(staff, 'corner', '111222', 'a')).toEqual({ ok: false, code: 'wait', wait_s: 900 });
		// the desk is not held up by it
		expect(await trySecret(staff, 'desk', FIRST, 'a')).toMatchObject({ ok: true });
		expect(await setPin(staff, null)).toEqual({ ok: true });
		expect(liveSession(staff, token)).toBeNull();
		expect(await trySecret(staff, 'corner', '120934', 'c')).toEqual({ ok: false, code: 'unset' });
	});
});
