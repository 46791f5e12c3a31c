import type { AgeBand, JawPlace, QuestionKind, RoundLength, Verdict } from '../../domain/quiz/question';
import type { CitationView } from '../view';
import type { AskText } from './types';

interface AskView {
	id: string;
	bands: AgeBand[];
	topic: string;
	text: AskText;
	textLang: string;
	sourceCitations: CitationView[];
}

export interface ClaimView extends AskView {
	verdict: Verdict;
	specimen: string | null;
}

export interface QuestionView extends AskView {
	specimens: string[];
	right: string;
}

export interface RoundView {
	id: string;
	name: string;
	band: AgeBand;
	length: RoundLength;
	seed: number;
}

/** What the quiz room is given beside the exhibit's view, in one language; plain data. */
export interface QuizView {
	off: QuestionKind[];
	waitsFor_s: number;
	claims: ClaimView[];
	questions: QuestionView[];
	rounds: RoundView[];
	/** by specimen, where a curator says it */
	jawPlaces: Readonly<Record<string, JawPlace>>;
}
