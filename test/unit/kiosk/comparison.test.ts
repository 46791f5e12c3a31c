import { describe, expect, it } from 'vitest';
import { Comparison } from '../../../src/lib/kiosk/comparison.svelte';

describe('Comparison', () => {
	it('lays picked teeth by turns, left then right', () => {
		const table = new Comparison(['a', 'b']);
		table.pick('c');
		expect([...table.ids]).toEqual(['c', 'b']);
		table.pick('d');
		expect([...table.ids]).toEqual(['c', 'd']);
		table.pick('e');
		expect([...table.ids]).toEqual(['e', 'd']);
	});

	it('never lays the same tooth twice: touching it hands the turn to the other place', () => {
		const table = new Comparison(['a', 'b']);
		table.pick('a');
		expect([...table.ids]).toEqual(['a', 'b']);
		expect(table.next).toBe(1);
		table.pick('c');
		expect([...table.ids]).toEqual(['a', 'c']);
	});

	it('fills empty places and drops teeth that have left the exhibit', () => {
		const table = new Comparison(['gone', 'b']);
		table.keepOnly(new Set(['b', 'c']), ['b', 'c']);
		expect([...table.ids]).toEqual(['c', 'b']);
		table.keepOnly(new Set(['b']), ['b']);
		expect([...table.ids]).toEqual([null, 'b']);
		table.keepOnly(new Set(), []);
		expect([...table.ids]).toEqual([null, null]);
	});
});
