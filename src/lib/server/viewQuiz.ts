import type { ByLang, Exhibit } from '../content/exhibit';
import type { QuizView } from '../content/quiz/view';
import type { CitationView } from '../content/view';

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
		jawPlaces: Object.fromEntries(jawPlaces),
	};
}
