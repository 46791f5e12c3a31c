import { apart, isAlike } from './apart';
import { sayDifference, type Message } from './sayTrait';
import { showIn, type ShowView } from './showIn';
import { telling } from './telling';
import { TRAIT_IDS, type ComparedTooth, type Trait, type TraitId } from './traits';
import { traitsOf } from './traitsOf';

/** One trait in which two teeth differ. */
export interface Difference {
	trait: TraitId;
	a: Trait;
	b: Trait;
	/** 0 .. 1: how telling the trait is in the exhibit, times how far the two lie apart */
	score: number;
	message: Message;
	show: { view: ShowView };
}

/**
 * What differs between two teeth, the most telling first: traits that both show and that measuring can tell apart. Equal
 * scores stand in the order of TRAIT_IDS. With a and b swapped the list is the same, each entry mirrored.
 */
export function differences(a: ComparedTooth, b: ComparedTooth, all: readonly ComparedTooth[]): Difference[] {
	const { of } = telling(all);
	const [ofA, ofB] = [traitsOf(a), traitsOf(b)];
	const found = TRAIT_IDS.flatMap((trait): Difference[] => {
		const [x, y] = [ofA[trait], ofB[trait]];
		const distance = apart(x, y, of[trait].spread);
		if (distance === null || isAlike(x, y) !== false) return [];
		return [
			{
				trait,
				a: x,
				b: y,
				score: of[trait].weight * distance,
				message: sayDifference(x, y),
				show: { view: showIn(trait, a, b) },
			},
		];
	});
	// sorting is stable: ties keep the order of TRAIT_IDS
	return found.sort((one, other) => other.score - one.score);
}
