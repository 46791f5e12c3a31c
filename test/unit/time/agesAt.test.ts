import { describe, expect, it } from 'vitest';
import { agesAt } from '../../../src/lib/domain/time/agesAt';

const idsAt = (oldest: number, youngest: number) => agesAt(oldest, youngest).map(({ id }) => id);

// boundaries: International Chronostratigraphic Chart 2026-06 (see test/reference/stages.test.ts)
describe('agesAt', () => {
	it('names the age that a span lies in', () => {
		expect(idsAt(70, 67)).toEqual(['maastrichtian']);
	});

	it('names every age that a span reaches into, oldest first', () => {
		expect(idsAt(84, 80)).toEqual(['santonian', 'campanian']);
		expect(idsAt(75, 50)).toEqual(['campanian', 'maastrichtian', 'paleocene', 'eocene']);
	});

	it('does not count an age that a span only touches', () => {
		expect(idsAt(83.6, 72.2)).toEqual(['campanian']);
		expect(idsAt(72.2, 66)).toEqual(['maastrichtian']);
	});

	it('gives a single moment one age; a boundary is the base of the younger one', () => {
		expect(idsAt(72.2, 72.2)).toEqual(['maastrichtian']);
		expect(idsAt(72.3, 72.3)).toEqual(['campanian']);
		expect(idsAt(0, 0)).toEqual(['holocene']);
		expect(idsAt(251.902, 251.902)).toEqual(['triassic']);
	});

	it('is empty outside the chart, and for what is no span', () => {
		expect(idsAt(300, 260)).toEqual([]);
		expect(idsAt(67, 70)).toEqual([]);
		expect(idsAt(10, -1)).toEqual([]);
		expect(idsAt(NaN, 0)).toEqual([]);
		expect(idsAt(10, NaN)).toEqual([]);
	});

	it('names what it can of a span that begins before the chart', () => {
		expect(idsAt(300, 240)).toEqual(['triassic']);
	});
});
