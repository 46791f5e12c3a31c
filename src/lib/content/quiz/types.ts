import type { AgeBand, QuestionKind, RoundLength, Verdict } from '../../domain/quiz/question';
import type { ByLang } from '../exhibit';

/** Tables of content/quiz/. */
export const QUIZ_TABLES = ['claims', 'questions', 'rounds'] as const;
export type QuizTable = (typeof QUIZ_TABLES)[number];

/** Words of a claim or a question; `why` by option. */
export interface AskText {
	/** what it is about, in a word or two */
	about: string;
	ask: string;
	hint: string;
	because: string;
	why: Readonly<Record<string, string>>;
}

export interface ClaimEntry {
	id: string;
	verdict: Verdict;
	bands: AgeBand[];
	topic: string;
	/** id of a specimen that shows it */
	specimen?: string;
	sources: string[];
	text: ByLang<AskText>;
}

export interface QuestionEntry {
	id: string;
	bands: AgeBand[];
	topic: string;
	/** ids of three specimens */
	specimens: string[];
	right: string;
	sources: string[];
	text: ByLang<AskText>;
}

/** A round that the curator has fixed. */
export interface FixedRound {
	id: string;
	band: AgeBand;
	length: RoundLength;
	seed: number;
	text: ByLang<{ name: string }>;
}

/** Everything in content/quiz/. */
export interface QuizContent {
	/** kinds of built questions that are switched off */
	off: QuestionKind[];
	/** idle time in a round before it asks whether anybody is there, s */
	waitsFor_s: number;
	claims: ClaimEntry[];
	questions: QuestionEntry[];
	rounds: FixedRound[];
}
