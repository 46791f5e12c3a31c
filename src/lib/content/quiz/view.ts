import type {
	AgeBand,
	Corner,
	JawPlace,
	QuestionKind,
	QuizPrey,
	RoundLength,
	Verdict,
} from '../../domain/quiz/question';
import type { PreyOutline } from '../feedingContent';
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
	/** shares of pierce, cut and crush by specimen, where its measures say enough */
	feeding: Readonly<Record<string, Readonly<Record<Corner, number>>>>;
	/** prey that suits one corner best, with its name */
	preys: (QuizPrey & { name: string; outline: PreyOutline })[];
	/** by specimen, where a curator says it */
	jawPlaces: Readonly<Record<string, JawPlace>>;
}
