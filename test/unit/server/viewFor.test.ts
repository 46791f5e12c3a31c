import { describe, expect, it } from 'vitest';
import { chooseLanguage } from '../../../src/lib/server/chooseLanguage';
import { healthOf } from '../../../src/lib/server/healthOf';
import type { PreparingState } from '../../../src/lib/server/preparingState';
import { viewFor } from '../../../src/lib/server/viewFor';
import { exhibit, hashOf, measures, specimen } from './samples';

describe('viewFor', () => {
	it('is plain data: it comes through JSON unchanged', () => {
		const view = viewFor(exhibit(), 'en');
		expect(JSON.parse(JSON.stringify(view))).toEqual(view);
	});

	it('gives a specimen with everything it names filled in', () => {
		const [a] = viewFor(exhibit(), 'en').specimens;
		expect(a).toEqual({
			id: 'a',
			accession: 'SKM a',
			title: 'Tooth a',
			short: 'A crown',
			alt: 'A cone',
			html: '<p>Words</p>',
			soundUrl: null,
			textLang: 'en',
			features: [{ id: 'edge', name: 'Edge', kind: 'carina', at: 0.5, where_deg: 0 }],
			group: {
				id: 'mosasaurus',
				name: 'Mosasaurus',
				latin: 'Mosasaurus',
				short: 'Sea lizard',
				living: false,
				habitat: 'sea',
				length: null,
				drawing: null,
				moves: null,
				lives: null,
				eats: null,
				eatenBy: null,
				textLang: 'en',
				sourceCitations: [{ citation: 'A book, 1865.', tag: 'seen' }],
			},
			part: 'crown',
			preservation: 'honey',
			bed: { id: 'marl', name: 'Marl', short: 'Mud', oldest_Ma: 70, youngest_Ma: 67 },
			kind: 'model',
			sourceCitations: [{ citation: 'A book, 1865.', tag: 'seen' }],
			identified: { by: 'Skerrow Museum', certainty: 'likely' },
			licence: 'http://creativecommons.org/licenses/by/4.0/',
			rightsHolder: 'Skerrow Museum',
			measures,
			facts: {
				labial: '+z',
				regionAreas_mm2: null,
				form: {
					carinae_deg: [],
					serrationsPer5mm: 0,
					ridges: null,
					section: 'oval',
					root: 'none',
					pitSide: null,
					facetSides: [],
					tipWorn: false,
				},
			},
			shape: {
				url: `/shapes/${hashOf('cone')}.glb`,
				pictureUrl: `/pictures/${hashOf('cone')}-honey.webp`,
				drawingUrl: `/drawings/${hashOf('cone')}.json`,
				preservation: 'honey',
				bounds: { min: [-5, 0, -4], max: [5, 20, 4] },
				picture: { side_mm: 22.7, toothWidth_mm: 10, toothHeight_mm: 20 },
				crownHeight_mm: 20,
				triangles: 100,
			},
		});
	});

	it('gives the animal behind a tooth, its length only with who says so', () => {
		const whole = exhibit();
		const [group] = whole.groups;
		const drawing = { viewBox: [0, 0, 100, 20] as [number, number, number, number], paths: ['M0 0L9 5Z'] };
		const withAnimal = (length_m: NonNullable<typeof group.length_m>) => ({
			...whole,
			groups: [
				{ ...group, length_m, drawing, text: { en: { ...group.text.en, moves: 'Swam', eatenBy: 'Sharks' } } },
			],
		});
		const known = withAnimal({ typical: 11, source: whole.sources[0].id });
		expect(viewFor(known, 'fr').specimens[0].group).toMatchObject({
			length: { typical_m: 11, largest_m: null, source: { citation: 'A book, 1865.', tag: 'seen' } },
			drawing,
			moves: 'Swam',
			lives: null,
			eatenBy: 'Sharks',
			textLang: 'en',
		});
		const unknown = withAnimal({ typical: 11, source: 'nowhere' });
		expect(viewFor(unknown, 'en').specimens[0].group.length).toBeNull();
	});

	it('fills what is missing in a language from the first', () => {
		const whole = exhibit({
			specimens: [
				specimen('a', {
					text: {
						...specimen('a').text,
						fr: { title: 'Dent', short: '', alt: '', features: {}, html: '', plain: '' },
					},
				}),
				specimen('b', { bed: undefined }),
			],
		});
		const view = viewFor(whole, 'fr');
		expect(view.lang).toBe('fr');
		expect(view.ui).toEqual({ start: 'Commencer', back: 'Back' });
		expect(view.specimens.map(({ title, textLang }) => [title, textLang])).toEqual([
			['Dent', 'fr'],
			['Tooth b', 'en'],
		]);
		expect(view.specimens[0].features[0].name).toBe('Edge');
		expect(view.specimens[1].bed).toBeNull();
		expect(view.glossary).toEqual([{ id: 'carina', term: 'Carina', meaning: 'An edge.' }]);
	});

	it('takes the first language for one that the exhibit has not', () => {
		expect(viewFor(exhibit(), 'xx').lang).toBe('en');
	});

	it('turns a feature to the side on which the lip of a scan lies', () => {
		const one = specimen('a');
		const seen = (labial: '+z' | '-z', where_deg: number): number => {
			const features = [{ id: 'edge', kind: 'other' as const, at: 0.5, where_deg }];
			const turned = { ...one, features, prepared: { ...one.prepared, labial } };
			return viewFor(exhibit({ specimens: [turned] }), 'en').specimens[0].features[0].where_deg;
		};
		expect([0, 90, 180, 270, 300].map((deg) => seen('+z', deg))).toEqual([0, 90, 180, 270, 300]);
		// mesial and distal stay where they are
		expect([0, 90, 180, 270, 300].map((deg) => seen('-z', deg))).toEqual([0, 270, 180, 90, 60]);
	});
});

describe('chooseLanguage', () => {
	it('takes what is asked for where the exhibit has it', () => {
		expect(chooseLanguage(exhibit(), 'fr')).toBe('fr');
		expect(chooseLanguage(exhibit(), '"><script>')).toBe('en');
		expect(chooseLanguage(exhibit(), null)).toBe('en');
		expect(chooseLanguage(null, 'fr')).toBe('en');
	});
});

describe('healthOf', () => {
	it('counts what there is', () => {
		const problem = { id: 'x', file: '', line: 1, column: 1, path: '', message: '', remedy: '' };
		const whole = exhibit();
		const preparing: PreparingState = {
			done: 1,
			total: 3,
			current: [{ specimen: 'a', stage: 'baking', fraction: 0.5 }],
			remaining_s: 12,
		};
		const store = {
			current: () => whole,
			problems: () => [
				{ ...problem, severity: 'error' as const },
				{ ...problem, severity: 'warning' as const },
				{ ...problem, severity: 'warning' as const },
			],
			preparing: () => preparing,
		};
		expect(healthOf(store, 12.4)).toEqual({
			ok: true,
			exhibit: whole.hash,
			specimens: 2,
			problems: { errors: 1, warnings: 2 },
			preparing,
			uptime_s: 12,
		});
		expect(healthOf({ ...store, current: () => null }, 0)).toMatchObject({
			ok: false,
			exhibit: null,
			specimens: 0,
		});
	});
});
