import { describe, expect, it } from 'vitest';
import type { SpecimenHealth } from '../../../src/lib/content/specimenHealth';
import { healthList, isOf, type HealthFilter, type HealthSort } from '../../../src/lib/ui/desk/healthList';

const health = (over: Partial<SpecimenHealth>): SpecimenHealth => ({
	id: 'skm-1',
	accession: 'SKM 1',
	title: 'A tooth',
	pictureUrl: null,
	languages: [
		{ code: 'en', words: 'whole', sound: true },
		{ code: 'fr', words: 'whole', sound: true },
	],
	shape: 'model',
	sources: 1,
	recalled: 0,
	licence: null,
	triangles: 10,
	scan_MB: null,
	features: 0,
	state: 'shown',
	day: null,
	errors: 0,
	warnings: 0,
	...over,
});
const ALL = [
	health({ id: 'skm-10', accession: 'SKM 10', title: 'Dent à crêtes', triangles: 30 }),
	health({
		id: 'skm-9',
		accession: 'SKM 9',
		title: 'Ébréchée',
		warnings: 2,
		languages: [{ code: 'fr', words: 'partly', sound: false }],
	}),
	health({
		id: 'skm-2',
		accession: '',
		title: '',
		state: 'broken',
		shape: 'unmarked',
		errors: 1,
		triangles: null,
	}),
	health({
		id: 'skm-3',
		accession: 'SKM 3',
		title: 'Zigzag',
		state: 'until',
		day: '2027-01-01',
		triangles: 90,
	}),
];
const ids = (filter: HealthFilter, sort: HealthSort = 'order', search = '') =>
	healthList(ALL, { filter, sort, search, lang: 'fr' }).map(({ id }) => id);

describe('healthList', () => {
	it('keeps what a filter asks for, in the order of the exhibit', () => {
		expect(ids('all')).toEqual(['skm-10', 'skm-9', 'skm-2', 'skm-3']);
		expect(ids('problems')).toEqual(['skm-9', 'skm-2']);
		expect(ids('hidden')).toEqual(['skm-2']);
		expect(ids('marks')).toEqual(['skm-2']);
		expect(ids('silent')).toEqual(['skm-9']);
		expect(ids('lang-fr')).toEqual(['skm-9']);
		expect(isOf('lang-es', ALL[1])).toBe(false);
	});

	it('puts numbers in order as numbers, titles as the language does, mistakes before warnings', () => {
		// one without a number is known by its folder
		expect(ids('all', 'number')).toEqual(['skm-3', 'skm-9', 'skm-10', 'skm-2']);
		expect(ids('all', 'title')).toEqual(['skm-10', 'skm-9', 'skm-2', 'skm-3']);
		expect(ids('all', 'problems').slice(0, 2)).toEqual(['skm-2', 'skm-9']);
		expect(ids('all', 'size')).toEqual(['skm-3', 'skm-10', 'skm-9', 'skm-2']);
	});

	it('finds words anywhere, whatever their accents and capitals', () => {
		expect(ids('all', 'order', 'EBRECHEE')).toEqual(['skm-9']);
		expect(ids('all', 'order', 'crêtes dent')).toEqual(['skm-10']);
		expect(ids('all', 'order', 'skm 3')).toEqual(['skm-3']);
		expect(ids('all', 'order', 'nothing')).toEqual([]);
	});
});
