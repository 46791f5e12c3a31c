import { correctedConcentration, epsilonSquared, standardDeviation, type Grouped } from './associations';
import { scaled } from './apart';
import { TRAIT_IDS, TRAITS, type ComparedTooth, type TraitId, type Traits } from './traits';
import { traitsOf } from './traitsOf';

/** How telling one trait is in an exhibit. */
export interface TraitTelling {
	/** share of what there is to see of the trait that lies between the groups, 0 .. 1; null when the teeth do not say */
	separation: number | null;
	/** 0 .. 1, the separation drawn towards the trait's prior where few teeth bear it out */
	weight: number;
	/** standard deviation on the trait's scale; 1 for a trait that is no number */
	spread: number;
}

export interface Telling {
	of: Readonly<Record<TraitId, TraitTelling>>;
	/** traits of the exhibit's teeth, those that are one tooth in two records once */
	teeth: readonly Traits[];
}

/** The prior counts as much as this many teeth beyond the first of each group; ours. */
export const PRIOR_TEETH = 8;
/** Fewer groups than this cannot say what tells groups apart. */
export const FEWEST_GROUPS = 3;

const told = new WeakMap<readonly ComparedTooth[], Telling>();

/**
 * How telling each trait is among the teeth of an exhibit: how well it separates their groups, not how large its
 * differences are.
 *
 * Separation: of numbers the between-group share of variance, corrected for small samples (epsilonSquared), on the
 * logarithm for lengths and ratios; of counts, categories and yes-no the same share of their variation
 * (correctedConcentration). The two are on one scale (see associations.ts).
 *
 * Weight: (m prior + d separation) / (m + d), with d = n - k, the known teeth beyond the first of each of the k groups
 * (only they show how a trait varies within a group), and m = PRIOR_TEETH: the mean of a prior worth m observations and
 * of d made ones. With fewer than three groups, or all values equal, the weight is the prior.
 *
 * Teeth of one group that are alike to the last digit in every trait are one tooth in two records (a cast, a copy) and
 * count once, so that a copy of the exhibit changes nothing.
 *
 * Kept for as long as `all` lives: the same array gives the same answer without counting again.
 */
export function telling(all: readonly ComparedTooth[]): Telling {
	const known = told.get(all);
	if (known) return known;
	const teeth = distinct(all);
	const of = Object.fromEntries(TRAIT_IDS.map((id) => [id, tellingOf(id, teeth)])) as Record<
		TraitId,
		TraitTelling
	>;
	const result: Telling = { of, teeth: teeth.map(({ traits }) => traits) };
	told.set(all, result);
	return result;
}

interface GroupedTraits {
	group: string;
	traits: Traits;
}

function distinct(all: readonly ComparedTooth[]): GroupedTraits[] {
	const seen = new Map<string, GroupedTraits>();
	for (const tooth of all) {
		const traits = traitsOf(tooth);
		let key = tooth.group.id;
		for (const id of TRAIT_IDS) {
			const { value, count, unknown } = traits[id];
			key += `\0${value} ${count} ${unknown}`;
		}
		if (!seen.has(key)) seen.set(key, { group: tooth.group.id, traits });
	}
	// in an order of its own, so that sums come out the same whatever the order of the teeth
	return [...seen].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, tooth]) => tooth);
}

function tellingOf(id: TraitId, teeth: readonly GroupedTraits[]): TraitTelling {
	const kind = TRAITS[id];
	const bearers = teeth.filter(({ traits }) => traits[id].value !== null);
	const groups = new Set(bearers.map(({ group }) => group)).size;
	let separation: number | null;
	let spread = 1;
	if (kind.kind === 'number') {
		const data: Grouped<number>[] = bearers.flatMap(({ group, traits }) => {
			const value = scaled(id, Number(traits[id].value));
			return value === null ? [] : [{ group, value }];
		});
		separation = epsilonSquared(data);
		const own = data.length >= FEWEST_GROUPS ? standardDeviation(data.map(({ value }) => value)) : null;
		spread = own ?? kind.spread;
	} else {
		separation = correctedConcentration(
			bearers.map(({ group, traits }) => ({ group, value: String(traits[id].value) })),
		);
	}
	if (groups < FEWEST_GROUPS) separation = null;
	const observed = separation === null ? 0 : bearers.length - groups;
	const weight = (PRIOR_TEETH * kind.prior + observed * (separation ?? 0)) / (PRIOR_TEETH + observed);
	return { separation, weight, spread };
}
