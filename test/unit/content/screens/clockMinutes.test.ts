import { describe, expect, it } from 'vitest';
import { clockMinutes, timeMeant } from '../../../../src/lib/content/screens/clockMinutes';

describe('clockMinutes', () => {
	it('counts from midnight to midnight', () => {
		expect(['0:00', '9:05', '18:30', '24:00'].map(clockMinutes)).toEqual([0, 545, 1110, 1440]);
	});
});

describe('timeMeant', () => {
	it.each([
		['9.30', '9:30'],
		['18', '18:00'],
		['18h30', '18:30'],
		['6 pm', '18:00'],
		['12 am', '0:00'],
		['12:15 p.m.', '12:15'],
	])('reads %s as %s', (found, meant) => expect(timeMeant(found)).toBe(meant));

	it('does not guess', () => {
		for (const found of ['25:00', 'noon', '9:75', '']) expect(timeMeant(found)).toBeUndefined();
	});
});
