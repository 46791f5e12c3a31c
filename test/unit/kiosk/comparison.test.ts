import { describe, expect, it } from 'vitest';
import { Comparison, MOST_TEETH } from '../../../src/lib/kiosk/comparison.svelte';

describe('Comparison of two teeth', () => {
	it('lays picked teeth by turns, left then right', () => {
		const table = new Comparison(['a', 'b']);
		table.pick('c');
		expect(table.ids).toEqual(['c', 'b']);
		table.pick('d');
		expect(table.ids).toEqual(['c', 'd']);
		table.pick('e');
		expect(table.ids).toEqual(['e', 'd']);
	});

	it('never lays the same tooth twice: touching it hands the turn to the place after it', () => {
		const table = new Comparison(['a', 'b']);
		table.pick('a');
		expect(table.ids).toEqual(['a', 'b']);
		expect(table.next).toBe(1);
		table.pick('c');
		expect(table.ids).toEqual(['a', 'c']);
	});

	it('drops teeth that have left the exhibit, and asks for a partner to the other', () => {
		const table = new Comparison(['gone', 'b']);
		const asked: (string | null)[] = [];
		const partner = (beside: string | null) => {
			asked.push(beside);
			return beside === 'b' ? 'c' : null;
		};
		table.keepOnly(new Set(['b', 'c']), partner);
		expect(table.ids).toEqual(['c', 'b']);
		table.keepOnly(new Set(['b']), partner);
		expect(table.ids).toEqual(['c', 'b']); // the partner chosen is taken as known
		table.keepOnly(new Set(), partner);
		expect(table.ids).toEqual([null, null]);
		expect(asked).toEqual(['b', 'b', null, null]);
	});

	it('starts from an empty table or one tooth: the exhibit chooses the rest', () => {
		const table = new Comparison([]);
		table.keepOnly(new Set(['a', 'z']), (beside) => (beside === null ? 'a' : 'z'));
		expect(table.ids).toEqual(['a', 'z']);
		const one = new Comparison(['z']);
		one.keepOnly(new Set(['a', 'z']), () => 'a');
		expect(one.ids).toEqual(['z', 'a']);
	});

	it('keeps a place open that was opened on purpose', () => {
		const table = new Comparison(['a', null]);
		table.keepOnly(new Set(['a', 'z']), () => 'z');
		expect(table.ids).toEqual(['a', null]);
		expect(table.next).toBe(1);
		table.pick('b');
		expect(table.ids).toEqual(['a', 'b']);
		expect(table.next).toBe(0);
	});

	it('takes a tooth away and leaves its place open; the last tooth stays', () => {
		const table = new Comparison(['a', 'b']);
		table.take(0);
		expect(table.ids).toEqual([null, 'b']);
		expect(table.next).toBe(0);
		expect(table.event).toEqual({ kind: 'taken', place: 0, id: 'a' });
		expect(table.canTake(1)).toBe(false);
		table.take(1);
		table.take(0);
		expect(table.ids).toEqual([null, 'b']);
		expect(table.pair).toBeNull();
	});
});

describe('Comparison of three and four', () => {
	it('opens a place, fills it, and refuses a fifth', () => {
		const table = new Comparison(['a', 'b']);
		expect(table.roomy).toBe(true);
		table.open();
		expect(table.ids).toEqual(['a', 'b', null]);
		expect(table.next).toBe(2);
		// one open place is enough
		table.open();
		expect(table.places).toHaveLength(3);
		table.pick('c');
		expect(table.ids).toEqual(['a', 'b', 'c']);
		table.add('d');
		expect(table.ids).toEqual(['a', 'b', 'c', 'd']);
		expect(table.roomy).toBe(false);
		table.open();
		expect(table.places).toHaveLength(MOST_TEETH);
		table.add('e');
		expect(table.ids).toEqual(['e', 'b', 'c', 'd']);
		expect(table.event).toEqual({ kind: 'laid', place: 0, id: 'e', went: 'a' });
	});

	it('takes an address with too many teeth or one twice', () => {
		expect(new Comparison(['a', 'b', 'c', 'd', 'e']).ids).toEqual(['a', 'b', 'c', 'd']);
		expect(new Comparison(['a', 'b', 'a']).ids).toEqual(['a', 'b']);
		expect(new Comparison(['a', null, null, 'b']).ids).toEqual(['a', null, 'b']);
		const doubled = new Comparison(['a', 'a']);
		doubled.keepOnly(new Set(['a', 'z']), () => 'z');
		expect(doubled.ids.filter((id) => id === 'a')).toHaveLength(1);
	});

	it('takes one of three away with its place; the others keep theirs and what is shown of them', () => {
		const table = new Comparison(['a', 'b', 'c']);
		const [first, , third] = table.places;
		third.feature = 'edge';
		table.choose(2);
		table.take(1);
		expect(table.ids).toEqual(['a', 'c']);
		expect(table.places[0].key).toBe(first.key);
		expect(table.places[1].key).toBe(third.key);
		expect(table.places[1].feature).toBe('edge');
		expect(table.next).toBe(1);
	});

	it('closes an open place', () => {
		const table = new Comparison(['a', 'b']);
		table.open();
		expect(table.canTake(2)).toBe(true);
		table.take(2);
		expect(table.ids).toEqual(['a', 'b']);
		expect(table.next).toBe(1);
	});

	it('lays a dragged tooth where it is dropped; one that lies already changes places', () => {
		const table = new Comparison(['a', 'b', 'c']);
		table.layAt('d', 1);
		expect(table.ids).toEqual(['a', 'd', 'c']);
		table.layAt('a', 2);
		expect(table.ids).toEqual(['c', 'd', 'a']);
		table.layAt('a', 2);
		table.layAt('x', 9);
		expect(table.ids).toEqual(['c', 'd', 'a']);
	});

	it('lets go of places whose teeth have left the exhibit, down to two', () => {
		const table = new Comparison(['a', 'gone', 'c', 'lost']);
		table.keepOnly(new Set(['a', 'c']), () => 'never');
		expect(table.ids).toEqual(['a', 'c']);
		const bare = new Comparison(['gone', 'lost', 'a']);
		bare.keepOnly(new Set(['a', 'z']), () => 'z');
		expect(bare.ids.filter((id) => id === 'a')).toHaveLength(1);
		expect(bare.ids).toHaveLength(2);
		expect(bare.next).toBeLessThan(2);
	});

	it('tells two of them apart, the two that were chosen', () => {
		const table = new Comparison(['a', 'b', 'c', 'd']);
		expect(table.pair).toEqual([0, 1]);
		table.tellApart(3);
		expect(table.pair).toEqual([1, 3]);
		table.tellApart(2);
		expect(table.pair).toEqual([2, 3]);
		table.tellApart(2); // chosen already
		expect(table.pair).toEqual([2, 3]);
		table.tellApart(0);
		expect(table.pair).toEqual([0, 2]);
		// a chosen tooth that is taken away makes room for another
		table.take(0);
		expect(table.ids).toEqual(['b', 'c', 'd']);
		expect(table.pair).toEqual([0, 1]);
		expect(new Comparison(['a', null]).pair).toBeNull();
	});

	it('holds its promises whatever is done, in any order', () => {
		// a small generator of our own: the same run each time
		let seed = 7;
		const random = (below: number) => {
			seed = (seed * 1103515245 + 12345) & 0x7fffffff;
			return seed % below;
		};
		const teeth = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
		const table = new Comparison(['a', 'b']);
		for (let i = 0; i < 3000; i += 1) {
			const [tooth, place] = [teeth[random(7)], random(5)];
			[
				() => table.pick(tooth),
				() => table.add(tooth),
				() => table.layAt(tooth, place),
				() => table.take(place),
				() => table.open(),
				() => table.choose(place),
				() => table.tellApart(place),
			][random(7)]();
			const lying = table.ids.filter((id) => id !== null);
			expect(table.places.length).toBeGreaterThanOrEqual(2);
			expect(table.places.length).toBeLessThanOrEqual(4);
			expect(lying.length).toBeGreaterThanOrEqual(1);
			expect(table.places.length - lying.length).toBeLessThanOrEqual(1);
			expect(new Set(lying).size).toBe(lying.length);
			expect(table.places[table.next]).toBeDefined();
			expect(new Set(table.places.map(({ key }) => key)).size).toBe(table.places.length);
			if (lying.length >= 2) {
				const [one, two] = table.pair!;
				expect(one).toBeLessThan(two);
				expect(table.ids[one] && table.ids[two]).toBeTruthy();
			}
		}
	});
});
