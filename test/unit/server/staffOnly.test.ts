import { describe, expect, it } from 'vitest';
import { isStaff, staffOnly } from '../../../src/lib/server/staffOnly';

interface Asked {
	address?: string;
	host?: string;
	origin?: string;
	method?: string;
	headers?: Record<string, string>;
	developing?: boolean;
}

function event({ address = '127.0.0.1', host = 'localhost:4173', origin, method = 'GET', headers }: Asked) {
	const all = new Headers({ ...headers, ...(origin === undefined ? {} : { 'x-origin': origin }) });
	const request = {
		method,
		// a Request would drop host and origin, which only a server or a browser may set
		headers: {
			get: (name: string) => (name === 'host' ? host : name === 'origin' ? (origin ?? null) : all.get(name)),
			has: (name: string) => all.has(name),
		},
	} as unknown as Request;
	return { request, getClientAddress: () => address };
}

const staff = (asked: Asked): boolean => isStaff(event(asked), asked.developing ?? false);

describe('isStaff', () => {
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
		expect(isStaff(unknown, false)).toBe(false);
	});

	it('takes changes from a page of this server only', () => {
		const post = { method: 'POST' };
		expect(staff({ ...post, origin: 'http://localhost:4173' })).toBe(true);
		for (const origin of [undefined, 'null', 'http://evil.example', 'http://localhost:9999', 'file://', ''])
			expect(staff({ ...post, ...(origin === undefined ? {} : { origin }) }), origin).toBe(false);
		expect(staff({ method: 'DELETE' })).toBe(false);
	});

	it('lets everyone in while developing, but no other site’s page change anything', () => {
		const elsewhere = { address: '192.168.1.9', host: 'laptop:4173', developing: true };
		expect(staff(elsewhere)).toBe(true);
		expect(staff({ ...elsewhere, method: 'POST', origin: 'http://laptop:4173' })).toBe(true);
		expect(staff({ ...elsewhere, method: 'POST', origin: 'http://evil.example' })).toBe(false);
	});
});

describe('staffOnly', () => {
	it('answers others as if there were nothing', () => {
		expect(() => staffOnly(event({ method: 'POST', origin: 'http://evil.example' }))).toThrow(
			expect.objectContaining({ status: 404 }),
		);
		expect(() => staffOnly(event({}))).not.toThrow();
	});
});
