import { isAlike } from './apart';
import { isAbsence, sayAlike, type Message } from './sayTrait';
import { showIn, type ShowView } from './showIn';
import { telling, type Telling } from './telling';
import { TRAIT_IDS, type ComparedTooth, type Trait, type TraitId } from './traits';
import { traitsOf } from './traitsOf';

/** One trait in which two teeth are alike. */
export interface Alike {
	trait: TraitId;
	a: Trait;
	b: Trait;
	/** 0 .. 1: how telling the trait is in the exhibit, times the share of its teeth that have it otherwise */
	score: number;
	message: Message;
	show: { view: ShowView };
}

/** What neither tooth has says half as much as what both have: comparisons of kinds discount joint absences
 * (common practice, no source). */
const ABSENT = 0.5;

/**
 * How two teeth are alike, the most telling first: traits that both show and whose values measuring cannot tell apart.
 * What few other teeth of the exhibit share counts most. Equal scores stand in the order of TRAIT_IDS.
 */
export function alike(a: ComparedTooth, b: ComparedTooth, all: readonly ComparedTooth[]): Alike[] {
	const known = telling(all);
	const [ofA, ofB] = [traitsOf(a), traitsOf(b)];
	const found = TRAIT_IDS.flatMap((trait): Alike[] => {
		const [x, y] = [ofA[trait], ofB[trait]];
		if (isAlike(x, y) !== true) return [];
		const score = known.of[trait].weight * rarity(x, y, known) * (isAbsence(x) ? ABSENT : 1);
		return [{ trait, a: x, b: y, score, message: sayAlike(x, y), show: { view: showIn(trait, a, b) } }];
	});
	return found.sort((one, other) => other.score - one.score);
}

/** Share of the exhibit's teeth, of those that show the trait, that do not have it as both of these do. */
function rarity(a: Trait, b: Trait, { teeth }: Telling): number {
	let shown = 0;
	let others = 0;
	for (const traits of teeth) {
		const trait = traits[a.id];
		if (trait.value === null) continue;
		shown++;
		if (isAlike(trait, a) !== true || isAlike(trait, b) !== true) others++;
	}
	return shown > 0 ? others / shown : 1;
}
