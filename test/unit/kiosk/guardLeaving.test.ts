import { describe, expect, it, vi } from 'vitest';
import { guardLeaving } from '../../../src/lib/kiosk/guardLeaving';

function page() {
	const navigation = new EventTarget();
	const location = {
		origin: 'http://localhost:4173',
		reload: vi.fn(),
		replace: vi.fn(),
		assign: vi.fn(),
	};
	const target = { navigation, location } as unknown as Parameters<typeof guardLeaving>[0];
	const go = (what: object) => {
		const event = new Event('navigate', { cancelable: true });
		Object.assign(event, {
			destination: { url: 'http://localhost:4173/compare', sameDocument: false },
			navigationType: 'push',
			hashChange: false,
			downloadRequest: null,
			formData: null,
			...what,
		});
		navigation.dispatchEvent(event);
		return event.defaultPrevented;
	};
	return { target, location, go };
}

describe('guardLeaving', () => {
	it('holds a page back that the server must give, and lets it go when asked', () => {
		const { target, location, go } = page();
		const asked: (() => void)[] = [];
		guardLeaving(target, (leave) => asked.push(leave));
		expect(go({})).toBe(true);
		expect(go({ navigationType: 'replace' })).toBe(true);
		expect(go({ navigationType: 'reload' })).toBe(true);
		asked[0]();
		expect(location.assign).toHaveBeenCalledWith('http://localhost:4173/compare');
		// the leave itself is not held back again
		expect(go({})).toBe(false);
		asked[1]();
		expect(location.replace).toHaveBeenCalledWith('http://localhost:4173/compare');
		asked[2]();
		expect(location.reload).toHaveBeenCalledOnce();
	});

	it('leaves alone what is none of its business', () => {
		const { target, go } = page();
		const stop = guardLeaving(target, () => expect.unreachable());
		expect(go({ destination: { url: 'http://localhost:4173/compare', sameDocument: true } })).toBe(false);
		expect(go({ destination: { url: 'http://other.example/', sameDocument: false } })).toBe(false);
		expect(go({ navigationType: 'traverse' })).toBe(false);
		expect(go({ hashChange: true })).toBe(false);
		expect(go({ downloadRequest: 'table.csv' })).toBe(false);
		expect(go({ formData: {} })).toBe(false);
		stop();
		expect(go({})).toBe(false);
	});

	it('does nothing where the browser cannot', () => {
		const stop = guardLeaving({} as Window, () => expect.unreachable());
		expect(stop).not.toThrow();
	});
});
