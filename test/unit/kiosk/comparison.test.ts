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

	it('drops teeth that have left the exhibit, and asks for a partner to the other', () => {
		const table = new Comparison(['gone', 'b']);
		const asked: (string | null)[] = [];
		const partner = (beside: string | null) => {
			asked.push(beside);
			return beside === 'b' ? 'c' : null;
		};
		table.keepOnly(new Set(['b', 'c']), partner);
		expect([...table.ids]).toEqual(['c', 'b']);
		table.keepOnly(new Set(['b']), partner);
		expect([...table.ids]).toEqual(['c', 'b']); // the partner chosen is taken as known
		table.keepOnly(new Set(), partner);
		expect([...table.ids]).toEqual([null, null]);
		expect(asked).toEqual(['b', 'b', null, null]);
	});

	it('starts from an empty table: the first tooth, then its partner', () => {
		const table = new Comparison([]);
		table.keepOnly(new Set(['a', 'z']), (beside) => (beside === null ? 'a' : 'z'));
		expect([...table.ids]).toEqual(['a', 'z']);
	});
});
