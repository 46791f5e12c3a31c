import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { alike } from '../../src/lib/domain/compare/alike';
import { differences } from '../../src/lib/domain/compare/differences';
import { telling } from '../../src/lib/domain/compare/telling';
import type { ComparedTooth, TraitId } from '../../src/lib/domain/compare/traits';
import { formatIcu } from '../../src/lib/kiosk/formatIcu';
import { demoTeeth } from '../unit/compare/demoTeeth';

/**
 * Six pairs of the demo exhibit, from its content folder to the sentence, against what the rules of telling.ts, apart.ts
 * and alike.ts give when worked by hand.
 *
 * The exhibit has 14 teeth of 13 groups; only Mosasaurus has two (0104, 0107), so d = 14 - 13 = 1, or less where a trait
 * is not shown by all. A weight is (8 prior + separation) / 9:
 * - the two agree: separation 1.    carinae (7.2 + 1)/9 = 0.911, ridges (5.6 + 1)/9 = 0.733, edge side (5.2 + 1)/9 = 0.689
 * - the two differ in a category: within varies 2 - 2/2 = 1, more than the whole exhibit's (14 - sum n^2/14)/13, which is
 *   under 1; separation 0.            section 6.4/9 = 0.711, root 3.2/9 = 0.356, worn tip 2.4/9 = 0.267, saws 6.8/9 = 0.756
 * - slenderness 1.505 and 1.791: within (ln 1.791 - ln 1.505)^2 / 2 = 0.0151; variance of all 14 logarithms 0.2615;
 *   separation 1 - 0.0151/0.2615 = 0.942; (6 + 0.942)/9 = 0.771; standard deviation 0.511
 * - curvature 17.5 and 21.0 degrees: within 6.2; variance of the 11 that show it 121.7; 1 - 6.2/121.7 = 0.949;
 *   (4.4 + 0.949)/9 = 0.594
 */
interface Pair {
	a: string;
	b: string;
	/** the two most telling differences with their scores */
	differ: [TraitId, number][];
	sentence: string;
	/** the most telling likeness */
	alike: [TraitId, number];
	alikeSentence: string;
}

const PAIRS: Pair[] = [
	{
		// two edges against none: 0.911 * 1; no ridges against 28: 0.733 * 1. Then blade against round 0.711.
		// Both tips worn flat, as only 0118 has it besides: 0.267 * 11/14
		a: 'skm-0104',
		b: 'skm-0112',
		differ: [
			['carinae', 0.911],
			['ridges', 0.733],
		],
		sentence: 'Tooth 1 has 2 sharp edges. Tooth 2 has none.',
		alike: ['tipWorn', 0.21],
		alikeSentence: 'The tips of both teeth are worn flat.',
	},
	{
		// one flat face against a blade: 0.711 * 1; whole root against resorbed one: 0.356 * 1.
		// 1.791 and 1.868: only the Komodo dragon's 1.751 is within 8 % of both; 0.771 * 11/14.
		// Next: both have saws, as one other of the ten with edges has: 0.756 * 7/10 = 0.529
		a: 'skm-0107',
		b: 'skm-0143',
		differ: [
			['section', 0.711],
			['root', 0.356],
		],
		sentence: 'Cut across half-way up, Tooth 1 is uneven and Tooth 2 is thin like a blade.',
		alike: ['slenderness', 0.606],
		alikeSentence: 'Both teeth are about equally slender.',
	},
	{
		// no ridges against ten: 0.733 * 1; edges front and back against lip and tongue: 0.689 * 1.
		// Then slenderness: ln(3.780/2.097) = 0.589; 0.589/(2 * 0.511) = 0.576; erf 0.585; * 0.771 = 0.451
		// two edges, as nine of 14 have: 0.911 * 5/14
		a: 'skm-0161',
		b: 'skm-0168',
		differ: [
			['ridges', 0.733],
			['edgeSide', 0.689],
		],
		sentence: 'Tooth 1 has no ridges. Tooth 2 has 10.',
		alike: ['carinae', 0.325],
		alikeSentence: 'Both teeth have 2 sharp edges.',
	},
	{
		// two edges against none: 0.911; blade against round: 0.711.
		// 41.6 and 46.3 degrees: none of the 11 that show it is within 5 of both; 0.594 * 9/11
		a: 'skm-0172',
		b: 'skm-0175',
		differ: [
			['carinae', 0.911],
			['section', 0.711],
		],
		sentence: 'Tooth 1 has 2 sharp edges. Tooth 2 has none.',
		alike: ['curvature', 0.486],
		alikeSentence: 'Both teeth bend about equally.',
	},
	{
		// no ridges against 28: 0.733; slenderness: ln(2.097/0.871) = 0.878; 0.878/(2 * 0.511) = 0.859; erf 0.776;
		// 0.776 * 0.771 = 0.598. Two edges: 0.911 * 5/14
		a: 'skm-0161',
		b: 'skm-0164',
		differ: [
			['ridges', 0.733],
			['slenderness', 0.598],
		],
		sentence: 'Tooth 1 has no ridges. Tooth 2 has 28.',
		alike: ['carinae', 0.325],
		alikeSentence: 'Both teeth have 2 sharp edges.',
	},
	{
		// three edges against two: 0.911; triangular against round: 0.711.
		// 2.104 and 2.097, and no other of the 14 within 8 % of both: 0.771 * 12/14
		a: 'skm-0150',
		b: 'skm-0161',
		differ: [
			['carinae', 0.911],
			['section', 0.711],
		],
		sentence: 'Tooth 1 has 3 sharp edges. Tooth 2 has 2.',
		alike: ['slenderness', 0.661],
		alikeSentence: 'Both teeth are about equally slender.',
	},
];

/** scores worked with three digits, on measures that may move in the third */
const NEAR = 0.015;

describe('differences of the demo specimens', () => {
	let all: ComparedTooth[];
	const tooth = (id: string): ComparedTooth => {
		const found = all.find((entry) => entry.id === id);
		if (!found) throw new Error(`no ${id} in the demo exhibit`);
		return found;
	};
	const file = path.resolve(__dirname, '../../content/ui/en.yaml');
	const words = parse(readFileSync(file, 'utf8')) as Record<string, string>;
	const say = ({ key, values }: { key: string; values: Readonly<Record<string, string | number>> }) =>
		formatIcu('en', words[key], values);

	beforeAll(async () => {
		all = await demoTeeth();
	}, 180_000);

	it('weigh traits as worked by hand', () => {
		const { of, teeth } = telling(all);
		expect(teeth).toHaveLength(14);
		expect(of.carinae.weight).toBeCloseTo(8.2 / 9, 6);
		expect(of.section.weight).toBeCloseTo(6.4 / 9, 6);
		expect(Math.abs(of.slenderness.weight - 0.771)).toBeLessThan(NEAR);
		expect(Math.abs(of.slenderness.spread - 0.511)).toBeLessThan(NEAR);
		expect(Math.abs(of.curvature.weight - 0.594)).toBeLessThan(NEAR);
	});

	it.each(PAIRS)('$a beside $b', (pair) => {
		const [a, b] = [tooth(pair.a), tooth(pair.b)];
		const found = differences(a, b, all);
		expect(found.slice(0, 2).map(({ trait }) => trait)).toEqual(pair.differ.map(([trait]) => trait));
		pair.differ.forEach(([, score], i) => expect(Math.abs(found[i].score - score)).toBeLessThan(NEAR));
		expect(say(found[0].message)).toBe(pair.sentence);
		const [first] = alike(a, b, all);
		expect(first.trait).toBe(pair.alike[0]);
		expect(Math.abs(first.score - pair.alike[1])).toBeLessThan(NEAR);
		expect(say(first.message)).toBe(pair.alikeSentence);
	});
});
