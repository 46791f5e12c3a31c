import { describe, expect, it } from 'vitest';
import { forgetVisit, SCREEN_KEY, screenName } from '../../../src/lib/kiosk/visitStore';

function storage(kept: Record<string, string>) {
	return {
		kept,
		get length() {
			return Object.keys(kept).length;
		},
		key: (index: number) => Object.keys(kept)[index] ?? null,
		getItem: (key: string) => kept[key] ?? null,
		setItem: (key: string, value: string) => void (kept[key] = value),
		removeItem: (key: string) => void delete kept[key],
	};
}
const forbidden = () => {
	throw new Error('SecurityError');
};
const shut = { length: 1, key: forbidden, getItem: forbidden, setItem: forbidden, removeItem: forbidden };

describe('forgetVisit', () => {
	it("removes everything but the screen's name", () => {
		const store = storage({ a: '1', [SCREEN_KEY]: 'hall-2', 'tooth-table.round': '{}', c: '3' });
		forgetVisit(store);
		expect(store.kept).toEqual({ [SCREEN_KEY]: 'hall-2' });
	});

	it('bears no store and a shut one', () => {
		expect(() => forgetVisit(null)).not.toThrow();
		expect(() => forgetVisit(shut)).not.toThrow();
	});
});

describe('screenName', () => {
	it('is what the address says, and stays for the pages after it', () => {
		const store = storage({});
		expect(screenName(null, store)).toBeNull();
		expect(screenName('hall-2', store)).toBe('hall-2');
		expect(screenName(null, store)).toBe('hall-2');
		expect(screenName('', store)).toBe('hall-2');
		expect(screenName('own', store)).toBe('own');
	});

	it('bears no store and a shut one', () => {
		expect(screenName('hall-2', null)).toBe('hall-2');
		expect(screenName('hall-2', shut)).toBe('hall-2');
		expect(screenName(null, shut)).toBeNull();
	});
});
