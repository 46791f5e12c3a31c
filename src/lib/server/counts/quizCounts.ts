import { z } from 'zod';
import { AGE_BANDS } from '../../domain/quiz/question';
import type { Tally } from './countsStore';

/** ids as the builder and the content folder make them: nothing that anybody typed fits */
const name = z
	.string()
	.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
	.max(160);
/** of a question, by its kind: see domain/quiz */
const asked = name.regex(/^(choose|touch|place|order|match|caliper|shed|position|claim|own)-/);
const places = z.number().int().min(0).max(15);

const answer = z.strictObject({
	question: asked,
	option: name,
	right: z.boolean(),
	hinted: z.boolean(),
	band: z.enum(AGE_BANDS),
});
const taker = z.strictObject({
	question: asked,
	option: name,
	right: z.boolean(),
	total: places,
	of: places,
});
const round = z.strictObject({ round: z.string().regex(/^\d{6}$/), total: places, of: places });

/** What a screen sends: answers as they are locked in; takers and rounds when a round has come to its end. */
export const quizCountsSchema = z.strictObject({
	/** a random name for this sending, so that sending it again counts nothing twice; kept for a day, tells nothing */
	batch: z.uuid(),
	answers: z.array(answer).max(6),
	takers: z.array(taker).max(6 * 15),
	rounds: z.array(round).max(6),
});
export type QuizCounts = z.infer<typeof quizCountsSchema>;

/** The same as entries of the counts. Takers of a round carry its code, so that rounds of the same questions stand together. */
export function quizEntries({ answers, takers, rounds }: QuizCounts): Pick<Tally, 'kind' | 'facts'>[] {
	const code = rounds[0]?.round;
	return [
		...answers.map((facts) => ({ kind: 'quiz-answer' as const, facts })),
		...takers.map((facts) => ({
			kind: 'quiz-taker' as const,
			facts: { ...facts, ...(code ? { round: code } : {}) },
		})),
		...rounds.map((facts) => ({ kind: 'quiz-round' as const, facts })),
	];
}
