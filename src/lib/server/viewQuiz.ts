import { formFacts } from '../domain/compare/formFacts';
import { evidenceOf } from '../domain/feeding/evidence';
import { placeTooth } from '../domain/feeding/place';
import type { Corner } from '../domain/quiz/question';
import type { ByLang, Exhibit, Specimen } from '../content/exhibit';
import type { PreyOutline } from '../content/feedingContent';
import type { QuizView } from '../content/quiz/view';
import type { CitationView } from '../content/view';

/** Prey that plainly suits one way of feeding; fish with bony scales and turtles would be argued about. */
const PLAIN_PREY: Readonly<Partial<Record<PreyOutline, Corner>>> = {
	squid: 'pierce',
	flesh: 'cut',
	shell: 'crush',
};

/** A region larger than this share of the triangle says too little to ask about; ours. */
const MOST_UNSURE = 0.5;

/** What the quiz room is given in one language; texts not translated come in the exhibit's first one. */
export function viewQuiz(exhibit: Exhibit, asked: string): QuizView {
	const first = exhibit.languages[0].code;
	const lang = exhibit.languages.some(({ code }) => code === asked) ? asked : first;
	const sources = new Map(exhibit.sources.map((source) => [source.id, source]));
	const citations = (ids: readonly string[]): CitationView[] =>
		ids.flatMap((id) => {
			const source = sources.get(id);
			if (!source) return [];
			const { citation, doi, tag } = source;
			return [{ citation, ...(doi ? { doi } : {}), tag }];
		});
	const spoken = <T>(text: ByLang<T>): { text: T; textLang: string } =>
		text[lang] ? { text: text[lang], textLang: lang } : { text: text[first], textLang: first };
	const quiz = exhibit.quiz ?? { off: [], waitsFor_s: 300, claims: [], questions: [], rounds: [] };
	const jawPlaces = exhibit.specimens.flatMap(({ id, jawPlace }) =>
		jawPlace ? [[id, jawPlace] as const] : [],
	);
	const words = exhibit.feeding?.words;
	return {
		off: quiz.off,
		waitsFor_s: quiz.waitsFor_s,
		claims: quiz.claims.map(({ sources: works, text, specimen, ...facts }) => ({
			...facts,
			specimen: specimen ?? null,
			...spoken(text),
			sourceCitations: citations(works),
		})),
		questions: quiz.questions.map(({ sources: works, text, ...facts }) => ({
			...facts,
			...spoken(text),
			sourceCitations: citations(works),
		})),
		rounds: quiz.rounds.map(({ text, ...facts }) => ({ ...facts, name: spoken(text).text.name })),
		feeding: Object.fromEntries(exhibit.specimens.flatMap((specimen) => placed(specimen, exhibit))),
		preys: (exhibit.feeding?.prey ?? []).flatMap(({ id, outline }) => {
			const corner = PLAIN_PREY[outline];
			const name = (words?.[lang]?.prey[id] ?? words?.[first]?.prey[id])?.name;
			return corner && name ? [{ id, outline, corner, name }] : [];
		}),
		jawPlaces: Object.fromEntries(jawPlaces),
	};
}

function placed(specimen: Specimen, { feeding }: Exhibit): [string, Readonly<Record<Corner, number>>][] {
	if (!feeding) return [];
	const { id, part, shape, prepared } = specimen;
	const declared = shape.kind === 'model' ? formFacts(shape.form) : {};
	const evidence = evidenceOf(prepared.measures, feeding.thresholds, declared, { part });
	const { position, uncertainty } = placeTooth(evidence, feeding.thresholds);
	return uncertainty > MOST_UNSURE ? [] : [[id, position]];
}
