import { TRAITS, type Trait, type TraitId } from '../compare/traits';
import type { AgeBand } from './question';

/** One way of asking for a tooth by a trait. */
export interface Asking {
	trait: TraitId;
	/** `most` and `least` of a number; `is` a value of a count, kind or yes-no */
	by: { kind: 'most' } | { kind: 'least' } | { kind: 'is'; value: number | string | boolean };
	bands: readonly AgeBand[];
	/** how hard the trait itself is to see, 0 .. 1; ours */
	hard: number;
}

const ALL: readonly AgeBand[] = ['5-7', '7-11', '11-14'];
const OLDER: readonly AgeBand[] = ['7-11', '11-14'];
const OLDEST: readonly AgeBand[] = ['11-14'];

const number = (
	trait: TraitId,
	bands: readonly AgeBand[],
	hard: number,
	...ways: ('most' | 'least')[]
): Asking[] => ways.map((kind) => ({ trait, by: { kind }, bands, hard }));
const value = (
	trait: TraitId,
	bands: readonly AgeBand[],
	hard: number,
	...values: (number | string | boolean)[]
): Asking[] => values.map((one) => ({ trait, by: { kind: 'is', value: one }, bands, hard }));

/** All that may be asked about a tooth by looking at it, and from which age (a teaching choice, ours). */
export const ASKINGS: readonly Asking[] = [
	...number('size', ALL, 0, 'most', 'least'),
	...number('slenderness', ALL, 0.1, 'most', 'least'),
	...number('curvature', ALL, 0.2, 'most', 'least'),
	...number('tip', ALL, 0.3, 'most', 'least'),
	...number('roundness', OLDEST, 0.6, 'most', 'least'),
	...number('wear', OLDER, 0.5, 'most'),
	...value('ridges', ALL, 0.2, 'none', 'many'),
	...value('carinae', OLDER, 0.3, 0, 2, 3),
	...value('serrations', OLDER, 0.5, true),
	...value('section', OLDER, 0.4, 'round', 'blade', 'triangular'),
	...value('edgeSide', OLDEST, 0.7, 'across'),
	...value('ridgeSide', OLDEST, 0.7, 'labial', 'lingual'),
	...value('root', ALL, 0.3, 'full', 'resorbed'),
	...value('tipWorn', ALL, 0.3, true),
];

/** a number is asked for only where the right tooth leads by this many times what measuring can tell apart; ours */
export const LEAD = 3;

/**
 * By how much the right tooth is right beside another one: for numbers, how far apart in units of LEAD times the precision
 * of the trait; for kinds and counts 1 where they differ without passing into each other. Under 1 = not sure enough to
 * ask; null when one of the two is unknown.
 */
export function marginOf({ trait, by }: Asking, right: Trait, other: Trait): number | null {
	if (right.value === null || other.value === null) return null;
	const kind = TRAITS[trait];
	if (kind.kind === 'number') {
		const [x, y] = [Number(right.value), Number(other.value)].map((v) =>
			kind.scale === 'log' ? Math.log(v) : v,
		);
		if (!Number.isFinite(x) || !Number.isFinite(y)) return null;
		const lead = by.kind === 'least' ? y - x : x - y;
		return lead / (LEAD * kind.precision);
	}
	if (by.kind !== 'is' || right.value !== by.value || other.value === by.value) return 0;
	if (kind.kind === 'category') {
		const pair = [right.value, other.value];
		// one side of a scan may be the very side that is asked for
		if (pair.includes('one-side')) return null;
		// 'other' outlines pass into any
		if (trait === 'section' && pair.includes('other')) return null;
		if (kind.near.some(([a, b]) => pair.includes(a) && pair.includes(b))) return trait === 'ridges' ? 0.5 : 0;
	}
	return 1;
}
