import { describe, expect, it } from 'vitest';
import { judgeBase, type BaseSigns } from '../../../src/lib/domain/replacement/judgeBase';

const ROOTS = ['none', 'stub', 'full', 'unclear'] as const;
const BASES = ['bays', 'clean-break', 'whole', 'thin-rim', 'unclear'] as const;
const TIPS = ['worn', 'unworn', 'unclear'] as const;
const EVERY: BaseSigns[] = ROOTS.flatMap((root) =>
	BASES.flatMap((base) => TIPS.map((tip) => ({ root, base, tip }))),
);

describe('judgeBase', () => {
	it.each([
		['a stub with bays and a worn tip', { root: 'stub', base: 'bays', tip: 'worn' }, 'shed', 'clear'],
		['a whole root', { root: 'full', base: 'whole', tip: 'worn' }, 'torn-out', 'clear'],
		[
			'a crown snapped off, without bays',
			{ root: 'none', base: 'clean-break', tip: 'worn' },
			'broken-crown',
			'clear',
		],
		['a thin rim under an unworn tip', { root: 'none', base: 'thin-rim', tip: 'unworn' }, 'germ', 'clear'],
		[
			'no root and a base too worn to read',
			{ root: 'none', base: 'unclear', tip: 'worn' },
			'cannot-tell',
			'open',
		],
		['bays in a root that is all there', { root: 'full', base: 'bays', tip: 'worn' }, 'cannot-tell', 'open'],
		['a thin rim under a worn tip', { root: 'none', base: 'thin-rim', tip: 'worn' }, 'cannot-tell', 'open'],
	] as const)('%s', (_, signs, verdict, certainty) => {
		expect(judgeBase(signs)).toMatchObject({ verdict, certainty });
	});

	it('never says shed without resorption bays', () => {
		for (const signs of EVERY)
			if (judgeBase(signs).verdict === 'shed') expect(signs.base, JSON.stringify(signs)).toBe('bays');
	});

	it('always gives a reason, and none for and against at once', () => {
		for (const signs of EVERY) {
			const { verdict, certainty, reasons } = judgeBase(signs);
			expect(reasons.length).toBeGreaterThan(0);
			expect(new Set(reasons.map(({ id }) => id)).size).toBe(reasons.length);
			expect(certainty === 'open').toBe(verdict === 'cannot-tell');
			if (verdict !== 'cannot-tell') expect(reasons.some(({ speaks }) => speaks === 'for')).toBe(true);
		}
	});
});
