import { describe, expect, it } from 'vitest';
import { stepOfKey } from '../../../src/lib/kiosk/stepOfKey';

describe('stepOfKey', () => {
	it('follows the line: the next thing lies right in English, left in Arabic', () => {
		expect(stepOfKey('ArrowRight', 'ltr')).toBe(1);
		expect(stepOfKey('ArrowLeft', 'ltr')).toBe(-1);
		expect(stepOfKey('ArrowRight', 'rtl')).toBe(-1);
		expect(stepOfKey('ArrowLeft', 'rtl')).toBe(1);
	});
	it('leads down to the next in every language, and leaves other keys alone', () => {
		for (const dir of ['ltr', 'rtl'] as const)
			expect(['ArrowDown', 'ArrowUp', 'Home', 'a'].map((key) => stepOfKey(key, dir))).toEqual([1, -1, 0, 0]);
	});
});
