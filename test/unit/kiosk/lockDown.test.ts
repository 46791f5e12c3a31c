import { describe, expect, it } from 'vitest';
import { leadsOut } from '../../../src/lib/kiosk/lockDown';

const key = (name: string, over: object = {}) => ({
	key: name,
	ctrlKey: false,
	metaKey: false,
	altKey: false,
	...over,
});

describe('leadsOut', () => {
	it('knows the keys of dialogs, history and zoom', () => {
		for (const name of ['p', 'P', 's', 'o', 'u', 'j', '+', '-', '0', 'n', 't']) {
			expect(leadsOut(key(name, { ctrlKey: true })), name).toBe(true);
			expect(leadsOut(key(name, { metaKey: true })), name).toBe(true);
			expect(leadsOut(key(name)), name).toBe(false);
		}
		for (const name of ['F1', 'F3', 'F11', 'F12']) expect(leadsOut(key(name))).toBe(true);
		expect(leadsOut(key('ArrowLeft', { altKey: true }))).toBe(true);
		expect(leadsOut(key('ArrowRight', { altKey: true }))).toBe(true);
	});

	it('leaves all keys that the rooms use', () => {
		for (const name of [
			'ArrowLeft',
			'ArrowUp',
			'Home',
			'End',
			'Enter',
			' ',
			'Tab',
			'Escape',
			'+',
			'-',
			'0',
			'c',
		])
			expect(leadsOut(key(name)), name).toBe(false);
		expect(leadsOut(key('ArrowLeft', { ctrlKey: true }))).toBe(false);
		expect(leadsOut(key('c', { ctrlKey: true }))).toBe(false);
	});
});
