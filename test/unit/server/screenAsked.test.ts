import { describe, expect, it } from 'vitest';
import { SCREEN_COOKIE, screenAsked } from '../../../src/lib/server/screenAsked';

/** A browser's cookies, as the framework hands them over. */
function browser() {
	const jar = new Map<string, string>();
	let written = 0;
	const cookies = {
		get: (name: string) => jar.get(name),
		set: (name: string, value: string) => {
			written += 1;
			jar.set(name, value);
		},
		delete: (name: string) => void jar.delete(name),
	};
	return {
		jar,
		ask: (address: string) => screenAsked({ url: new URL(address, 'http://table.local'), cookies }),
		written: () => written,
	};
}

describe('screenAsked', () => {
	it('keeps the name for every later address, and writes it once', () => {
		const { ask, jar, written } = browser();
		expect(ask('/')).toBeNull();
		expect(ask('/?screen=low-table')).toBe('low-table');
		expect(ask('/compare?screen=low-table')).toBe('low-table');
		expect(ask('/compare')).toBe('low-table');
		expect(written()).toBe(1);
		expect(ask('/?screen=wall')).toBe('wall');
		expect(jar.get(SCREEN_COOKIE)).toBe('wall');
	});

	it('forgets it on somebody’s own device', () => {
		const { ask, jar } = browser();
		ask('/?screen=wall');
		expect(ask('/?screen=own')).toBeNull();
		expect(jar.size).toBe(0);
		expect(ask('/')).toBeNull();
	});

	it('takes no name that could not be one, in an address or in a cookie', () => {
		const { ask, jar } = browser();
		expect(ask('/?screen=%3Cb%3E')).toBeNull();
		jar.set(SCREEN_COOKIE, '../../etc');
		expect(ask('/')).toBeNull();
		ask('/?screen=wall');
		expect(ask('/?screen=No%20Name')).toBe('wall');
	});
});
