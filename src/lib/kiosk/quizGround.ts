import type { QuizView } from '../content/quiz/view';
import type { SpecimenView } from '../content/view';
import type { QuizGround } from '../domain/quiz/buildRound';
import { quizTooth } from '../domain/quiz/quizTooth';

/** What rounds are built from: the same on every screen that shows the same exhibit. */
export function quizGround(specimens: readonly SpecimenView[], quiz: QuizView): QuizGround {
	const { off, preys, claims, questions } = quiz;
	return {
		// in an order of its own, so that moving a specimen in the drawer changes no round
		teeth: [...specimens]
			.sort((a, b) => (a.id < b.id ? -1 : 1))
			.map((specimen) =>
				quizTooth(specimen, {
					feeding: quiz.feeding[specimen.id] ?? null,
					jawPlace: quiz.jawPlaces[specimen.id] ?? null,
				}),
			),
		preys: preys.map(({ id, corner }) => ({ id, corner })),
		claims: off.includes('claim')
			? []
			: claims.map(({ id, verdict, bands, topic, specimen }) => ({
					id,
					verdict,
					bands,
					topic,
					tooth: specimen,
				})),
		own: questions.map(({ id, bands, topic, specimens: teeth, right }) => ({
			id,
			bands,
			topic,
			teeth,
			right,
		})),
		off,
	};
}
