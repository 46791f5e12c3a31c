import type { Message } from '../compare/sayTrait';
import type { ShowView } from '../compare/showIn';
import type { TraitId, Traits } from '../compare/traits';

/** Ages in years, as school groups come. */
export const AGE_BANDS = ['5-7', '7-11', '11-14'] as const;
export type AgeBand = (typeof AGE_BANDS)[number];

export const ROUND_LENGTHS = [5, 10, 15] as const;
export type RoundLength = (typeof ROUND_LENGTHS)[number];

/**
 * choose = one tooth of three; touch = a part of one tooth; place = a tooth between pierce, cut and crush; order = teeth by
 * a trait; match = a tooth and its prey; caliper = measure; shed = how a tooth was lost; position = where in the jaw;
 * claim = true, not true, or scientists disagree
 */
export const QUESTION_KINDS = [
	'choose',
	'touch',
	'place',
	'order',
	'match',
	'caliper',
	'shed',
	'position',
	'claim',
] as const;
export type QuestionKind = (typeof QUESTION_KINDS)[number];

export const CORNERS = ['pierce', 'cut', 'crush'] as const;
export type Corner = (typeof CORNERS)[number];

export const JAW_PLACES = ['front', 'middle', 'back'] as const;
export type JawPlace = (typeof JAW_PLACES)[number];

/** holds = as far as anybody knows; wrong = it is not so; debated = those who study it disagree */
export const VERDICTS = ['holds', 'wrong', 'debated'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** What can be touched on a tooth. */
export const PART_KINDS = ['tip', 'carina', 'facet', 'pit', 'neck', 'root'] as const;
export type PartKind = (typeof PART_KINDS)[number];

/** A place on a tooth, in the words of the trade: how high, and where round the section. */
export interface TouchPart {
	kind: PartKind;
	/** fraction of the crown's height; below 0 = on the root */
	at: number;
	/** degrees round the prepared mesh, from +x towards +z */
	where_deg: number;
	/** of a line up the crown, such as an edge: how low and how high it reaches, fractions */
	from?: number;
	to?: number;
}

/** A tooth as the quiz knows it. Plain data. */
export interface QuizTooth {
	id: string;
	group: string;
	traits: Traits;
	/** the view in which each trait is best seen */
	views: Readonly<Record<TraitId, ShowView>>;
	/** everything on it that may be touched; all parts of a kind or none */
	parts: readonly TouchPart[];
	/** shares of pierce, cut and crush, summing to 1; null where its measures do not say */
	feeding: Readonly<Record<Corner, number>> | null;
	/** null where nobody says */
	jawPlace: JawPlace | null;
	/** CH: apex to the distal base point, mm */
	crownHeight_mm: number;
}

/** A prey that suits one way of feeding best. */
export interface QuizPrey {
	id: string;
	corner: Corner;
}

/** A statement from the curator's ground, with what is known of it. */
export interface Claim {
	id: string;
	verdict: Verdict;
	bands: readonly AgeBand[];
	topic: string;
	/** a tooth that shows it, if one does */
	tooth: string | null;
}

/** A question of the curator's own: choose among teeth. */
export interface OwnQuestion {
	id: string;
	bands: readonly AgeBand[];
	topic: string;
	teeth: readonly string[];
	right: string;
}

export type OptionLabel =
	| { kind: 'tooth'; tooth: string }
	| { kind: 'word'; message: Message }
	/** a pin on the tooth */
	| { kind: 'part'; part: TouchPart };

export interface Option {
	/** stable: counts are kept under it */
	id: string;
	label: OptionLabel;
	right: boolean;
	/** why it is right, or why it is not */
	why: Message;
}

/** What is done on the thing itself; every task but `order` can be answered by its options as well. */
export type Task =
	| { kind: 'pick' }
	| { kind: 'touch'; target: PartKind }
	| { kind: 'place'; corner: Corner }
	/** `right`: ids of teeth, first to last */
	| { kind: 'order'; right: readonly string[] }
	| { kind: 'caliper'; right_mm: number; within_mm: number };

export interface Question {
	/** stable over rounds: counts are kept under it */
	id: string;
	kind: QuestionKind;
	/** what is learned; a trait, or a subject of the curator's */
	topic: string;
	ask: Message;
	hint: Message;
	/** teeth on the table, in the order shown */
	teeth: readonly string[];
	/** in the order shown; of `order` the teeth themselves, none right by itself */
	options: readonly Option[];
	task: Task;
	/** said with the evidence, whatever was answered */
	because: Message;
	/** how the teeth turn to show it */
	evidence: { view: ShowView; teeth: readonly string[]; part?: TouchPart };
	/**
	 * By how much the right answer is right, at least 1: in what measuring can tell apart for numbers, whole steps for
	 * kinds and counts.
	 */
	margin: number;
	/** 0 easy .. 1 hard; null = a curator wrote it and nobody knows */
	difficulty: number | null;
}

/** What a team answered. */
export type Response =
	| { kind: 'option'; option: string }
	| { kind: 'order'; teeth: readonly string[] }
	| { kind: 'reading'; mm: number }
	/** a place touched: fraction of crown height, degrees, and distance from the axis in mm */
	| { kind: 'touch'; at: number; where_deg: number; radius_mm: number };
