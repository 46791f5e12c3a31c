import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createSessions, type Sessions } from '../../../../src/lib/server/staff/sessions';

const MINUTE_ms = 60_000;
let folder: string;
let now_ms: number;
const warnings: string[] = [];
const opened: Sessions[] = [];
const open = () => {
	const sessions = createSessions({
		file: path.join(folder, 'staff-sessions.json'),
		now: () => now_ms,
		logger: { info: () => undefined, warn: (message) => void warnings.push(message) },
	});
	opened.push(sessions);
	return sessions;
};
const pass = (minutes: number) => (now_ms += minutes * MINUTE_ms);
const DESK = { kind: 'desk', gallery: false, under: 'salt' } as const;

beforeEach(() => {
	folder = mkdtempSync(path.join(tmpdir(), 'sessions-'));
	now_ms = Date.UTC(2026, 5, 1);
	warnings.length = 0;
});
afterEach(async () => {
	await Promise.all(opened.splice(0).map((sessions) => sessions.written()));
	rmSync(folder, { recursive: true, force: true });
});

describe('sessions', () => {
	it('are known by a token of 256 bits, which is written down nowhere', async () => {
		const sessions = open();
		const token = sessions.begin(DESK);
		expect(Buffer.from(token, 'base64url')).toHaveLength(32);
		expect(sessions.begin(DESK)).not.toBe(token);
		expect(sessions.find(token)).toMatchObject(DESK);
		await sessions.written();
		const kept = readFileSync(path.join(folder, 'staff-sessions.json'), 'utf8');
		expect(kept).not.toContain(token);
		expect(statSync(path.join(folder, 'staff-sessions.json')).mode & 0o777).toBe(0o600);
		for (const other of [undefined, '', 'x', `${token}x`, sessions.find(token)!.id])
			expect(sessions.find(other)).toBeNull();
	});

	it('end two hours after the last use, or half an hour in the gallery', () => {
		const sessions = open();
		for (const [gallery, minutes] of [
			[false, 120],
			[true, 30],
		] as const) {
			const token = sessions.begin({ ...DESK, gallery });
			pass(minutes - 1);
			sessions.use(sessions.find(token)!);
			pass(minutes - 1);
			// looking is no use
			expect(sessions.find(token)).not.toBeNull();
			expect(sessions.left(sessions.find(token)!).unused_ms).toBe(MINUTE_ms);
			pass(1);
			expect(sessions.find(token)).toBeNull();
		}
	});

	it('end after eight hours, used or not; the PIN’s after five minutes', () => {
		const sessions = open();
		const token = sessions.begin(DESK);
		for (let hour = 0; hour < 7; hour += 1) {
			pass(60);
			sessions.use(sessions.find(token)!);
		}
		pass(59);
		expect(sessions.find(token)).not.toBeNull();
		pass(1);
		expect(sessions.find(token)).toBeNull();
		const corner = sessions.begin({ ...DESK, kind: 'corner' });
		pass(4);
		sessions.use(sessions.find(corner)!);
		pass(1);
		expect(sessions.find(corner)).toBeNull();
	});

	it('outlast a restart of the server, but not their own end', async () => {
		const first = open();
		const token = first.begin(DESK);
		await first.written();
		pass(60);
		expect(open().find(token)).toMatchObject(DESK);
		pass(60);
		expect(open().find(token)).toBeNull();
	});

	it('end when signed out, after a restart too', async () => {
		const sessions = open();
		const [token, other] = [sessions.begin(DESK), sessions.begin(DESK)];
		sessions.end(sessions.find(token)!);
		await sessions.written();
		for (const now of [sessions, open()]) {
			expect(now.find(token)).toBeNull();
			expect(now.find(other)).not.toBeNull();
		}
	});

	it('do not last longer because a clock was set back', () => {
		const sessions = open();
		const token = sessions.begin(DESK);
		pass(-2);
		expect(sessions.find(token)).not.toBeNull();
		pass(-60);
		expect(sessions.find(token)).toBeNull();
	});

	it('go on without a file that can be read or written', async () => {
		writeFileSync(path.join(folder, 'staff-sessions.json'), '[{"id":1}');
		const sessions = open();
		rmSync(folder, { recursive: true });
		writeFileSync(folder, 'no folder any more');
		const token = sessions.begin(DESK);
		sessions.begin(DESK);
		await sessions.written();
		expect(sessions.find(token)).not.toBeNull();
		expect(warnings).toHaveLength(1);
	});

	it('are no more than a hundred: the oldest goes', () => {
		const sessions = open();
		const tokens = Array.from({ length: 101 }, () => sessions.begin(DESK));
		expect(sessions.find(tokens[0])).toBeNull();
		expect(sessions.find(tokens[1])).not.toBeNull();
	});
});
