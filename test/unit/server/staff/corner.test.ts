import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { getStaff, liveSession } from '../../../../src/lib/server/staff/getStaff';
import { hashSecret } from '../../../../src/lib/server/staff/hashSecret';
import { SESSION_COOKIE } from '../../../../src/lib/server/staffOnly';
import { GET, POST } from '../../../../src/routes/staff-corner/+server';
import { staffEvent, type StaffAsked } from './staffEvent';

// while developing every machine may come to the door; here it is as in a museum
vi.mock('$app/environment', () => ({ dev: false, browser: false, building: false, version: 'test' }));

const CHEAP = { n: 2, r: 1, p: 1 };
const PIN = '120934';
const OWN = { origin: 'http://localhost:4173', method: 'POST' };
const folder = mkdtempSync(path.join(tmpdir(), 'corner-'));

beforeAll(async () => {
	vi.stubEnv('DATA_DIR', folder);
	vi.stubEnv('CONTENT_DIR', path.join(folder, 'content'));
	const record = {
		passphrase: await hashSecret('four teeth on a table', CHEAP),
		pin: await hashSecret(PIN, CHEAP),
	};
	await getStaff().file.update(() => ({ version: 1, ...record }));
});
afterAll(async () => {
	await getStaff().sessions.written();
	vi.unstubAllEnvs();
	rmSync(folder, { recursive: true, force: true });
});

type Handler = (event: never) => Response | Promise<Response>;
const call = async (handler: unknown, asked: StaffAsked) => {
	const event = { ...staffEvent(asked), locals: { lang: 'en', firstLang: 'en', screen: 'hall' } };
	return (handler as Handler)(event as never);
};
const status = async (handler: unknown, asked: StaffAsked): Promise<number> => {
	try {
		return (await call(handler, asked)).status;
	} catch (refused) {
		return (refused as { status: number }).status;
	}
};

describe('the staff corner', () => {
	it('is not there for other machines, unless their screens are let in', async () => {
		const elsewhere = { address: '192.168.1.9', host: 'museum.example' };
		expect(await status(GET, elsewhere)).toBe(404);
		expect(await status(POST, { ...OWN, ...elsewhere, body: { pin: PIN } })).toBe(404);
		vi.stubEnv('DESK_FROM', 'screens');
		const own = { ...elsewhere, origin: 'http://museum.example', method: 'POST' };
		expect(await status(GET, elsewhere)).toBe(200);
		expect(await status(POST, { ...own, body: { pin: PIN } })).toBe(200);
		expect(await status(POST, { ...own, origin: 'http://evil.example', body: { pin: PIN } })).toBe(404);
		vi.stubEnv('DESK_FROM', '');
	});

	it('gives the PIN a session of its own kind, and leaves a desk’s session alone', async () => {
		const cookies: Record<string, string> = {};
		expect(await status(POST, { ...OWN, cookies, body: { pin: PIN } })).toBe(200);
		expect(liveSession(getStaff(), cookies[SESSION_COOKIE])).toMatchObject({ kind: 'corner', gallery: true });
		const state = getStaff().file.read();
		const under = state.is === 'set' ? state.record.passphrase.salt : '';
		const desk = getStaff().sessions.begin({ kind: 'desk', gallery: true, under });
		const signedIn = { [SESSION_COOKIE]: desk };
		expect(await status(POST, { ...OWN, cookies: signedIn, body: { pin: PIN } })).toBe(200);
		expect(signedIn[SESSION_COOKIE]).toBe(desk);
	});

	it('refuses what is no PIN, and after five wrong ones everything for a quarter of an hour', async () => {
		const from = { address: '127.0.0.9' };
		for (const body of [undefined, null, {}, { pin: 120934 }, { pin: PIN, more: 1 }, { pin: '1'.repeat(40) }])
			expect(await status(POST, { ...OWN, ...from, body })).toBe(400);
		for (let i = 0; i < 4; i += 1)
			expect(await (await call(POST, { ...OWN, ...from, body: { pin: '111222' } })).json()).toEqual({
				ok: false,
				code: 'wrong',
			});
		const last = await call(POST, { ...OWN, ...from, body: { pin: '111222' } });
		expect(last.status).toBe(429);
		expect(await last.json()).toEqual({ ok: false, code: 'wait', wait_s: 900 });
		expect(await status(POST, { ...OWN, ...from, body: { pin: PIN } })).toBe(429);
		// the page is told when it opens, however often it is loaded
		expect(await (await call(GET, from)).json()).toMatchObject({ hasPin: true, wait_s: 900 });
	});
});
