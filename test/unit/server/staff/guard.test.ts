import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { hashSecret } from '../../../../src/lib/server/staff/hashSecret';
import { getStaff } from '../../../../src/lib/server/staff/getStaff';
import type { SessionKind } from '../../../../src/lib/server/staff/sessions';
import { formToken, SESSION_COOKIE, staffOnly } from '../../../../src/lib/server/staffOnly';
import { staffEvent, type StaffAsked } from './staffEvent';

// while developing every machine may come to the door; here it is as in a museum
vi.mock('$app/environment', () => ({ dev: false, browser: false, building: false, version: 'test' }));

type Route = Record<string, unknown> & { actions?: Record<string, unknown> };
const ROUTES = import.meta.glob<Route>(
	'../../../../src/routes/{desk,status}/**/+{server,page.server,layout.server}.ts',
);
const PAGES = Object.keys(import.meta.glob('../../../../src/routes/{desk,status}/**/+page.svelte'));
const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'HEAD', 'fallback'];
const nameOf = (file: string) => file.replace(/^.*routes/, '');

/** The door itself: who is not signed in yet comes this far. Signing in, setting the first passphrase, asking whether one is in. */
const DOOR = new Set([
	'/desk/enter/+page.server.ts load',
	'/desk/session/+server.ts GET',
	'/desk/session/+server.ts POST',
	'/desk/passphrase/+server.ts POST',
]);
/** What the PIN of the staff corner opens. */
const CORNER = [/^\/desk\/screen\//, /^\/status\//, /^\/desk\/session\//];
const OWN = { origin: 'http://localhost:4173' };

interface Handler {
	name: string;
	changes: boolean;
	call: (asked: StaffAsked) => Promise<unknown>;
}

async function handlers(): Promise<Handler[]> {
	const found: Handler[] = [];
	for (const [file, load] of Object.entries(ROUTES)) {
		const route = await load();
		const add = (name: string, method: string, handler: unknown) => {
			const call = async (asked: StaffAsked) => {
				const event = staffEvent({ method, path: '/desk', ...asked });
				const extra = {
					params: { id: 'x', path: 'x' },
					depends: () => undefined,
					locals: { lang: 'en' },
					parent: () => ({}),
				};
				return (handler as (event: unknown) => unknown)({ ...event, ...extra });
			};
			found.push({ name: `${nameOf(file)} ${name}`, changes: method !== 'GET' && method !== 'HEAD', call });
		};
		if (route.load) add('load', 'GET', route.load);
		for (const method of METHODS)
			if (route[method]) add(method, method === 'fallback' ? 'POST' : method, route[method]);
		for (const [name, action] of Object.entries(route.actions ?? {})) add(`action ${name}`, 'POST', action);
	}
	return found;
}

/** Status with which a call is refused; what it answers without refusing counts as 200, or as its own status. */
async function status(answer: Promise<unknown>): Promise<number> {
	try {
		const given = await answer;
		return given instanceof Response ? given.status : 200;
	} catch (refused) {
		const { status: code } = refused as { status?: number };
		if (code === undefined) throw refused;
		return code;
	}
}

const folder = mkdtempSync(path.join(tmpdir(), 'guard-'));
const CHEAP = { n: 2, r: 1, p: 1 };
let cookies: Record<SessionKind, Record<string, string>>;

beforeAll(async () => {
	vi.stubEnv('DATA_DIR', folder);
	vi.stubEnv('CONTENT_DIR', path.join(folder, 'content'));
	const { file, sessions } = getStaff();
	const record = {
		passphrase: await hashSecret('four teeth on a table', CHEAP),
		pin: await hashSecret('120934', CHEAP),
	};
	await file.update(() => ({ version: 1, ...record }));
	const begin = (kind: SessionKind, under: string) => ({
		[SESSION_COOKIE]: sessions.begin({ kind, gallery: false, under }),
	});
	cookies = { desk: begin('desk', record.passphrase.salt), corner: begin('corner', record.pin.salt) };
});
afterAll(async () => {
	await getStaff().sessions.written();
	vi.unstubAllEnvs();
	rmSync(folder, { recursive: true, force: true });
});

describe('every route of the desk and of the status page', () => {
	it('has a load of its own on the server, if it is a page', () => {
		expect(PAGES.length).toBeGreaterThan(5);
		for (const page of PAGES)
			expect(Object.keys(ROUTES)).toContain(page.replace('+page.svelte', '+page.server.ts'));
	});

	it('is not there for other machines', async () => {
		const all = await handlers();
		expect(all.length).toBeGreaterThan(10);
		for (const { name, call } of all)
			for (const asked of [
				{ address: '192.168.1.9' },
				{ host: 'museum.example' },
				{ headers: { 'x-forwarded-for': '127.0.0.1' } },
			])
				expect(await status(call({ ...OWN, ...asked, cookies: { ...cookies.desk } })), name).toBe(404);
	});

	it('is closed to who is not signed in', async () => {
		for (const { name, changes, call } of await handlers()) {
			if (DOOR.has(name)) continue;
			const jars: Record<string, string>[] = [{}, { [SESSION_COOKIE]: 'made up' }, { [SESSION_COOKIE]: '' }];
			for (const jar of jars) {
				expect(await status(call({ ...OWN, cookies: jar })), name).toBe(401);
				const page = { ...OWN, cookies: jar, headers: { accept: 'text/html' } };
				if (!changes && !name.includes('/session/')) expect(await status(call(page)), name).toBe(303);
			}
		}
	});

	it('is closed to the PIN’s session, but for calibration and status', async () => {
		for (const { name, call } of await handlers()) {
			if (DOOR.has(name) || CORNER.some((path) => path.test(name))) continue;
			expect(await status(call({ ...OWN, cookies: { ...cookies.corner } })), name).toBe(401);
		}
	});

	it('changes nothing without the form token, or for another site’s page', async () => {
		const token = formToken(cookies.desk[SESSION_COOKIE]);
		const changing = (await handlers()).filter(({ name, changes }) => changes && !DOOR.has(name));
		expect(changing.length).toBeGreaterThan(4);
		for (const { name, call } of changing) {
			const jar = () => ({ ...cookies.desk });
			for (const given of ['', 'x', formToken('another'), token.slice(1)])
				expect(
					await status(call({ ...OWN, cookies: jar(), headers: { 'x-staff-token': given } })),
					name,
				).toBe(403);
			const headers = { 'x-staff-token': token };
			expect(await status(call({ origin: 'http://evil.example', cookies: jar(), headers })), name).toBe(404);
			expect(await status(call({ cookies: jar(), headers })), name).toBe(404);
		}
	});
});

describe('asking for the session', () => {
	it('tells who is signed in their token, and everybody else nothing', async () => {
		const get = (await handlers()).find(({ name }) => name === '/desk/session/+server.ts GET')!;
		const said = async (jar: Record<string, string>) =>
			((await get.call({ cookies: jar })) as Response).json();
		expect(await said({})).toBeNull();
		expect(await said({ [SESSION_COOKIE]: 'made up' })).toBeNull();
		const token = formToken(cookies.desk[SESSION_COOKIE]);
		expect(await said({ ...cookies.desk })).toMatchObject({ kind: 'desk', token });
	});
});

describe('staffOnly', () => {
	const desk = (asked: StaffAsked = {}) => staffEvent({ cookies: { ...cookies.desk }, ...asked });

	it('lets in who is signed in, and knows them', () => {
		expect(staffOnly(desk())).toMatchObject({ kind: 'desk' });
		expect(staffOnly(staffEvent({ cookies: { ...cookies.corner } }), 'corner')).toMatchObject({
			kind: 'corner',
		});
	});

	it('takes a change from a page of ours with the token of this session', () => {
		const headers = { 'x-staff-token': formToken(cookies.desk[SESSION_COOKIE]) };
		expect(staffOnly(desk({ ...OWN, method: 'POST', headers }))).toMatchObject({ kind: 'desk' });
	});

	it('sends who is not signed in to the door, and remembers where they were going', () => {
		const asked = { path: '/desk/mark/skm-0104?lang=fr', headers: { accept: 'text/html' }, cookies: {} };
		const to = '/desk/enter?to=%2Fdesk%2Fmark%2Fskm-0104&lang=fr';
		expect(() => staffOnly(staffEvent(asked))).toThrow(
			expect.objectContaining({ status: 303, location: to }),
		);
		expect(() => staffOnly(staffEvent({ ...asked, headers: {}, isDataRequest: true }))).toThrow(
			expect.objectContaining({ status: 303, location: to }),
		);
	});

	it('counts what somebody does as use, and not what a page asks for by itself', () => {
		const { sessions } = getStaff();
		const use = vi.spyOn(sessions, 'use');
		staffOnly(desk({ isDataRequest: true }));
		staffOnly(desk({ headers: { 'sec-fetch-mode': 'cors' } }));
		expect(use).not.toHaveBeenCalled();
		staffOnly(desk({ headers: { 'sec-fetch-mode': 'navigate' } }));
		expect(use).toHaveBeenCalledTimes(1);
		use.mockRestore();
	});
});
