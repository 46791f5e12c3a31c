import { describe, expect, it } from 'vitest';
import { deskFrom, isFromHere, mayKnock } from '../../../src/lib/server/staffOnly';
import { staffEvent, type StaffAsked } from './staff/staffEvent';

const event = staffEvent;
const staff = (asked: StaffAsked & { developing?: boolean }): boolean =>
	isFromHere(event(asked), asked.developing ?? false);

describe('isFromHere', () => {
	it('lets in who sits at this machine', () => {
		for (const address of ['127.0.0.1', '127.0.1.1', '::1', '::ffff:127.0.0.1'])
			for (const host of ['localhost:4173', 'localhost', '127.0.0.1:80', '[::1]:4173'])
				expect(staff({ address, host }), `${address} ${host}`).toBe(true);
	});

	it('keeps out other machines, other names and what was passed on', () => {
		for (const address of ['192.168.1.9', '10.0.0.1', '::ffff:192.168.1.9', 'fe80::1', '1127.0.0.1', ''])
			expect(staff({ address }), address).toBe(false);
		for (const host of ['museum.example', 'localhost.evil.example', 'evil.example:4173', '192.168.1.9', ''])
			expect(staff({ host }), host).toBe(false);
		for (const name of ['x-forwarded-for', 'forwarded', 'via'])
			expect(staff({ headers: { [name]: '127.0.0.1' } }), name).toBe(false);
		const unknown = {
			...event({}),
			getClientAddress: () => {
				throw new Error('prerendering');
			},
		};
		expect(isFromHere(unknown, false)).toBe(false);
	});

	it('takes changes from a page of this server only', () => {
		const post = { method: 'POST' };
		expect(staff({ ...post, origin: 'http://localhost:4173' })).toBe(true);
		for (const origin of [undefined, 'null', 'http://evil.example', 'http://localhost:9999', 'file://', ''])
			expect(staff({ ...post, ...(origin === undefined ? {} : { origin }) }), origin).toBe(false);
		expect(staff({ method: 'DELETE' })).toBe(false);
	});

	it('believes the browser when it says that another site’s page is asking', () => {
		const post = { method: 'POST', origin: 'http://localhost:4173' };
		expect(staff({ ...post, headers: { 'sec-fetch-site': 'same-origin' } })).toBe(true);
		for (const site of ['cross-site', 'same-site', 'none'])
			expect(staff({ ...post, headers: { 'sec-fetch-site': site } }), site).toBe(false);
	});

	it('lets everyone in while developing, but no other site’s page change anything', () => {
		const elsewhere = { address: '192.168.1.9', host: 'laptop:4173', developing: true };
		expect(staff(elsewhere)).toBe(true);
		expect(staff({ ...elsewhere, method: 'POST', origin: 'http://laptop:4173' })).toBe(true);
		expect(staff({ ...elsewhere, method: 'POST', origin: 'http://evil.example' })).toBe(false);
	});
});

describe('mayKnock', () => {
	const elsewhere = {
		address: '192.168.1.9',
		host: 'museum.example',
		headers: { 'x-forwarded-for': '10.1.1.1' },
	};

	it('opens no door to other machines unless the museum says so', () => {
		for (const value of [undefined, '', 'yes', 'Network', '1']) expect(deskFrom(value)).toBe('here');
		for (const kind of ['desk', 'corner'] as const) {
			expect(mayKnock(event(elsewhere), kind, 'here', false)).toBe(false);
			expect(mayKnock(event(elsewhere), kind, 'network', false)).toBe(true);
			expect(mayKnock(event({}), kind, 'here', false)).toBe(true);
		}
	});

	it('can open the staff corner on other screens without the desk', () => {
		expect(deskFrom('screens')).toBe('screens');
		expect(mayKnock(event(elsewhere), 'corner', 'screens', false)).toBe(true);
		expect(mayKnock(event(elsewhere), 'desk', 'screens', false)).toBe(false);
		expect(mayKnock(event({}), 'desk', 'screens', false)).toBe(true);
	});

	it('lets no other site’s page change anything on the network either', () => {
		const post = { ...elsewhere, method: 'POST' };
		expect(mayKnock(event({ ...post, origin: 'https://museum.example' }), 'desk', 'network', false)).toBe(
			true,
		);
		for (const origin of [undefined, 'null', 'https://evil.example', 'https://museum.example.evil.example'])
			expect(
				mayKnock(event({ ...post, ...(origin === undefined ? {} : { origin }) }), 'desk', 'network', false),
				origin,
			).toBe(false);
	});
});
