/** What the replacement room is given: content/replacement in one language, as plain data. Types only. */
import type { SourceTag } from '../exhibit';
import type { CitationView } from '../view';
import type { Part } from '../exhibit';
import type {
	ArrangementEntry,
	CountPreset,
	JawPreset,
	Mystery,
	Quantity,
	ReplacementAnimal,
	SlicePreset,
	StageEntry,
	WearPair,
} from './types';

/** A number as it may be shown. */
export interface NumberView {
	from: number;
	to: number;
	/** null = as good as its source; else the screen marks it: recalled, read about, or an assumption of ours */
	mark: Exclude<SourceTag, 'seen'> | null;
	source: CitationView;
}

/** Words of an entry in the page's language, or in another (`textLang`) where a translation is missing. */
export interface EntryWords {
	name: string;
	line: string;
	/** null = nothing more to say */
	more: string | null;
	textLang: string;
	/** every work behind the entry and its numbers, each once */
	sourceCitations: CitationView[];
}

/** Quantities become numbers to show, texts become words. */
type Shown<T> = {
	[K in Exclude<keyof T, 'text' | 'sources'>]: NonNullable<T[K]> extends Quantity
		? NumberView | Extract<T[K], undefined>
		: NonNullable<T[K]> extends { days: Quantity }
			? (Omit<NonNullable<T[K]>, 'days'> & { days: NumberView }) | Extract<T[K], undefined>
			: T[K];
} & EntryWords;

export type ReplacementAnimalView = Shown<ReplacementAnimal>;
export type StageView = Shown<StageEntry>;
export type ArrangementView = Shown<ArrangementEntry>;
export type JawPresetView = Shown<JawPreset>;
export type SlicePresetView = Shown<SlicePreset>;
export type CountPresetView = Shown<CountPreset>;
export type MysteryView = Shown<Mystery>;
export type WearPairView = Shown<WearPair>;

export interface DrawerTooth {
	id: string;
	accession: string;
	title: string;
	pictureUrl: string;
}

/** What the museum's drawer holds, by part; every part of exhibit.ts once, also the empty ones. */
export interface DrawerShare {
	part: Part;
	count: number;
	teeth: DrawerTooth[];
}

export interface ReplacementView {
	animals: ReplacementAnimalView[];
	/** stage 0 first; all six or none */
	stages: StageView[];
	arrangements: ArrangementView[];
	jaws: JawPresetView[];
	slices: SlicePresetView[];
	counts: CountPresetView[];
	mysteries: MysteryView[];
	wear: WearPairView[];
	drawer: DrawerShare[];
}
