import { describe, expect, it } from 'vitest';
import { CHART_EDITION, CHART_OLDEST_MA, STAGES } from '../../src/lib/domain/time/stages';

/*
 * Base and margin of error, million years, written down a second time from the commission's own data for the
 * International Chronostratigraphic Chart, edition 2026-06: repository i-c-stratigraphy/chart, file
 * source/chart-nolabels.ttl (time:hasBeginning of each concept; owl:versionInfo "2026-06"), CC BY 4.0,
 * (c) International Commission on Stratigraphy.
 */
const CHART = {
	triassic: [251.902, 0.024],
	jurassic: [201.4, 0.2],
	'early-cretaceous': [143.1, 0.6], // ischart:LowerCretaceous
	cenomanian: [100.5, 0.1],
	turonian: [93.9, 0.2],
	coniacian: [89.8, 0.3],
	santonian: [85.7, 0.2],
	campanian: [83.6, 0.2],
	maastrichtian: [72.2, 0.2],
	paleocene: [66.0, null],
	eocene: [56.0, null],
	oligocene: [33.9, null],
	miocene: [23.04, null],
	pliocene: [5.333, null],
	pleistocene: [2.58, null],
	holocene: [0.0117, null],
} as const;

describe('STAGES against the published chart', () => {
	it('names the edition', () => {
		expect(CHART_EDITION).toBe('2026-06');
	});

	it('has every base and its margin of error', () => {
		const ours = Object.fromEntries(
			STAGES.map(({ id, base_Ma, baseError_Ma }) => [id, [base_Ma, baseError_Ma]]),
		);
		expect(ours).toEqual(CHART);
	});

	// time:hasEnd of the same concepts
	it.each([
		['cenomanian', 93.9],
		['campanian', 72.2],
		['maastrichtian', 66.0],
		['oligocene', 23.04],
		['holocene', 0],
	])('ends the %s at %d', (id, top_Ma) => {
		expect(STAGES.find((stage) => stage.id === id)?.top_Ma).toBe(top_Ma);
	});

	it('has the ranks of the chart', () => {
		const ofRank = (rank: string) => STAGES.filter((stage) => stage.rank === rank).map(({ id }) => id);
		expect(ofRank('period')).toEqual(['triassic', 'jurassic']);
		// gts:rank rank:Age
		expect(ofRank('age')).toEqual([
			'cenomanian',
			'turonian',
			'coniacian',
			'santonian',
			'campanian',
			'maastrichtian',
		]);
	});

	it('runs from old to young without a gap', () => {
		expect(STAGES[0].base_Ma).toBe(CHART_OLDEST_MA);
		for (let i = 1; i < STAGES.length; i++) {
			expect(STAGES[i].base_Ma).toBe(STAGES[i - 1].top_Ma);
			expect(STAGES[i].base_Ma).toBeLessThan(STAGES[i - 1].base_Ma);
		}
	});
});
