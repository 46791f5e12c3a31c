import type { Arrangement } from '../../domain/replacement/lifeForm';
import type { BaseSigns, Verdict } from '../../domain/replacement/judgeBase';
import type { LifeStageName } from '../../domain/replacement/lifeStage';
import type { ToothForm } from '../../domain/tooth/form';
import type { ByLang, Preservation, SourceTag } from '../exhibit';

/** A number or a range, with who says so. `tag` may be weaker than the source's own: a number recalled from a work that was seen. */
export interface Quantity {
	from: number;
	to: number;
	source: string;
	tag: SourceTag;
}

/** Words of one entry: a name, a line, and more where there is more to say. */
export interface EntryText {
	name: string;
	line: string;
	more?: string;
}

interface Entry {
	id: string;
	/** whole works behind the entry, beside those of its numbers */
	sources: string[];
	text: ByLang<EntryText>;
}

export const ANIMAL_KINDS = ['crocodilian', 'lizard', 'mosasaur', 'plesiosaur', 'dinosaur'] as const;
export type AnimalKind = (typeof ANIMAL_KINDS)[number];

/** in-use = age of a tooth in use; waiting = of its successor; forming = time to form a tooth; lines = lines at the cut, a minimum */
export const AGE_KINDS = ['in-use', 'waiting', 'forming', 'lines'] as const;
export type AgeKind = (typeof AGE_KINDS)[number];

/** One line of the table in which animals are compared. What nobody has published is absent. */
export interface ReplacementAnimal extends Entry {
	kind: AnimalKind;
	living: boolean;
	latin?: string;
	/** days from one tooth to the next at a position */
	period_d?: Quantity;
	/** age of a tooth, days */
	age?: { kind: AgeKind; days: Quantity };
	/** width of a daily line, um */
	line_um?: Quantity;
	/** positions of the whole mouth */
	positions?: Quantity;
	/** most successors waiting at one position */
	successors?: Quantity;
}

/** Words of one stage of the gallery's scheme. */
export interface StageEntry extends Entry {
	id: LifeStageName;
}

/** Words of one of the three places where a successor grows. */
export interface ArrangementEntry extends Entry {
	id: Arrangement;
}

/** A jaw to run. */
export interface JawPreset extends Entry {
	positions: number;
	/** z; one number, or one for each step from a position to the next */
	spacing: number | number[];
	period_d: number;
	/** who gives z; absent = made up here to show a regime */
	spacingSource?: Quantity;
}

/** A slice of dentine to read. */
export interface SlicePreset extends Entry {
	/** lines of the tooth in use */
	inUse: Quantity;
	/** lines of its successor at the same position */
	successor?: Quantity;
	line_um: Quantity;
	/** which made-up slice is drawn */
	seed: number;
	/** narrowest lines at the edge, loss of width 0 .. 0.5 */
	edgeLoss: Quantity;
}

/** Numbers to begin counting with; what is assumed has a source with the tag `ours`. */
export interface CountPreset extends Entry {
	positions: Quantity;
	period_d: Quantity;
	/** period at the end where it grows with age */
	lastPeriod_d?: Quantity;
	years: Quantity;
	/** volume of one tooth, mm3 */
	tooth_mm3: Quantity;
}

/** A found base to judge. */
export interface Mystery extends Entry {
	form: ToothForm;
	preservation: Preservation;
	signs: BaseSigns;
	/** what the signs lead to (held against domain/replacement/judgeBase) */
	answer: Verdict;
}

/** Two teeth that meet. */
export interface WearPair extends Entry {
	tooth: ToothForm;
	/** absent = like the tooth */
	opposing?: ToothForm;
	/** where the sliders begin */
	closing_deg: number;
	spacing_mm: number;
	/** height left when it is called a stump, over the unworn crown's */
	stumpShare: number;
}

/** Everything in content/replacement/. */
export interface ReplacementContent {
	animals: ReplacementAnimal[];
	stages: StageEntry[];
	arrangements: ArrangementEntry[];
	jaws: JawPreset[];
	slices: SlicePreset[];
	counts: CountPreset[];
	mysteries: Mystery[];
	wear: WearPair[];
}

export const REPLACEMENT_TABLES = [
	'animals',
	'stages',
	'arrangements',
	'jaws',
	'slices',
	'counts',
	'mysteries',
	'wear',
] as const satisfies readonly (keyof ReplacementContent)[];
export type ReplacementTable = (typeof REPLACEMENT_TABLES)[number];
