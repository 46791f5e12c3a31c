import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { checkMessage } from '../../../src/lib/content/checkMessage';
import { sayAlike, sayDifference, sayName, sayValue } from '../../../src/lib/domain/compare/sayTrait';
import {
	TRAIT_IDS,
	TRAITS,
	type Trait,
	type TraitId,
	type TraitValue,
} from '../../../src/lib/domain/compare/traits';
import { formatIcu } from '../../../src/lib/kiosk/formatIcu';

const LANGUAGES = ['en', 'fr', 'es'];
const WORDS = Object.fromEntries(
	LANGUAGES.map((lang) => {
		const file = path.resolve(__dirname, `../../../content/ui/${lang}.yaml`);
		return [lang, parse(readFileSync(file, 'utf8')) as Record<string, string>];
	}),
);

function trait(id: TraitId, value: TraitValue, count?: number): Trait {
	return { id, kind: TRAITS[id].kind, value, from: 'measured', ...(count === undefined ? {} : { count }) };
}

/** Values that each trait may have; of ridges with their number. */
function valuesOf(id: TraitId): Trait[] {
	const kind = TRAITS[id];
	if (id === 'ridges')
		return [0, 1, 2, 5, 20].map((count) =>
			trait(id, count === 0 ? 'none' : count < 16 ? 'few' : 'many', count),
		);
	if (kind.kind === 'number') return [0.4, 1, 2, 5].map((value) => trait(id, value));
	if (kind.kind === 'count') return [0, 1, 2, 5].map((value) => trait(id, value));
	if (kind.kind === 'category') return kind.values.map((value) => trait(id, value));
	return [true, false].map((value) => trait(id, value));
}

const say = (
	lang: string,
	{ key, values }: { key: string; values: Readonly<Record<string, string | number>> },
) => formatIcu(lang, WORDS[lang][key], values);

describe('words for what differs', () => {
	it('stand in all languages under the same keys, with the same fillers', () => {
		const keys = (lang: string) =>
			Object.keys(WORDS[lang])
				.filter((key) => key.startsWith('differ_'))
				.sort();
		const needed = TRAIT_IDS.flatMap((id) => {
			const [first, second] = valuesOf(id);
			return [sayDifference(first, second), sayAlike(first, first), sayName(first), sayValue(first)];
		}).map(({ key }) => key);
		for (const lang of LANGUAGES) {
			expect(keys(lang)).toEqual(keys('en'));
			expect(keys(lang)).toEqual(expect.arrayContaining(needed));
			for (const key of keys(lang)) {
				const checked = checkMessage(WORDS[lang][key]);
				expect(checked, `${lang} ${key}`).toEqual(checkMessage(WORDS.en[key]));
				expect(checked.ok, `${lang} ${key}`).toBe(true);
			}
		}
	});

	for (const lang of LANGUAGES)
		it(`say every pair of values without a gap: ${lang}`, () => {
			const whole = /^\p{Lu}[^{}]*\.$/u;
			for (const id of TRAIT_IDS) {
				const seen = new Set<string>();
				for (const a of valuesOf(id)) {
					expect(say(lang, sayAlike(a, a))).toMatch(whole);
					expect(say(lang, sayValue(a))).toMatch(/^\S(.*\S)?$/u);
					for (const b of valuesOf(id)) {
						if (a.value === b.value && a.count === b.count) continue;
						const sentence = say(lang, sayDifference(a, b));
						expect(sentence).toMatch(whole);
						// both teeth are named, by the numbers on their badges
						expect(sentence).toMatch(lang === 'en' ? /Tooth 1/ : lang === 'fr' ? /dent 1/ : /diente 1/);
						expect(sentence).toMatch(lang === 'en' ? /Tooth 2/ : lang === 'fr' ? /dent 2/ : /diente 2/);
						expect(sentence).not.toMatch(/undefined|null|NaN|other/);
						seen.add(sentence);
					}
				}
				expect(seen.size).toBeGreaterThan(1);
				const values = new Set(valuesOf(id).map((value) => say(lang, sayValue(value))));
				expect(values.size).toBe(valuesOf(id).length);
			}
		});

	it('count in the plurals of each language', () => {
		const edges = (lang: string, a: number, b: number) =>
			say(lang, sayDifference(trait('carinae', a), trait('carinae', b)));
		expect(edges('en', 0, 1)).toBe('Tooth 1 has no sharp edge. Tooth 2 has one.');
		expect(edges('en', 1, 2)).toBe('Tooth 1 has one sharp edge. Tooth 2 has 2.');
		expect(edges('en', 5, 0)).toBe('Tooth 1 has 5 sharp edges. Tooth 2 has none.');
		expect(edges('fr', 0, 1)).toBe('La dent 1 n’a aucun bord tranchant. La dent 2 en a un.');
		expect(edges('fr', 1, 2)).toBe('La dent 1 a un bord tranchant. La dent 2 en a 2.');
		expect(edges('fr', 5, 0)).toBe('La dent 1 a 5 bords tranchants. La dent 2 n’en a aucun.');
		expect(edges('es', 0, 1)).toBe('El diente 1 no tiene ningún filo cortante. El diente 2 tiene uno.');
		expect(edges('es', 1, 2)).toBe('El diente 1 tiene un filo cortante. El diente 2 tiene 2.');
		expect(edges('es', 5, 0)).toBe('El diente 1 tiene 5 filos cortantes. El diente 2 no tiene ninguno.');
		const alike = (lang: string, value: number) =>
			say(lang, sayAlike(trait('carinae', value), trait('carinae', value)));
		expect([0, 1, 2, 5].map((value) => alike('en', value))).toEqual([
			'Neither tooth has a sharp edge.',
			'Both teeth have one sharp edge.',
			'Both teeth have 2 sharp edges.',
			'Both teeth have 5 sharp edges.',
		]);
	});

	it('say how many times as much where that reads better', () => {
		const height = (a: number, b: number) => say('en', sayDifference(trait('size', a), trait('size', b)));
		expect(height(10, 17)).toBe('The crown of Tooth 2 is taller than that of Tooth 1.');
		expect(height(17.6, 10)).toBe('The crown of Tooth 1 is about 2 times as tall as that of Tooth 2.');
		expect(height(10, 27)).toBe('The crown of Tooth 2 is about 3 times as tall as that of Tooth 1.');
		expect(height(200, 10)).toBe('The crown of Tooth 1 is taller than that of Tooth 2.');
		expect(say('en', sayDifference(trait('wear', 0), trait('wear', 0.3)))).toBe(
			'Tooth 2 is more worn than Tooth 1.',
		);
	});

	it('write numbers as each language does', () => {
		const size = trait('size', 1234.56);
		expect(LANGUAGES.map((lang) => say(lang, sayValue(size)).replace(/\s/gu, ' '))).toEqual([
			'1,234.6 mm',
			'1 234,6 mm',
			'1234,6 mm',
		]);
		const tip = trait('tip', 0.0567);
		expect(LANGUAGES.map((lang) => say(lang, sayValue(tip)).replace(/\s/gu, ' '))).toEqual([
			'5.7%',
			'5,7 %',
			'5,7 %',
		]);
		expect(say('fr', sayValue(trait('slenderness', 2)))).toBe('2,00');
		expect(say('es', sayValue(trait('curvature', 29.6)))).toBe('30°');
	});

	it('names no unworn teeth as worn, and no worn ones as unworn', () => {
		const wear = (value: number) => say('en', sayAlike(trait('wear', value), trait('wear', value)));
		expect(wear(0.002)).toBe('Neither tooth shows much wear.');
		expect(wear(0.05)).toBe('Both teeth are about equally worn.');
		const tips = (value: boolean) => say('en', sayAlike(trait('tipWorn', value), trait('tipWorn', value)));
		expect(tips(true)).toBe('The tips of both teeth are worn flat.');
		expect(tips(false)).toBe('Both teeth still have their tips.');
	});
});
