import { z } from 'zod';
import { AGE_BANDS, QUESTION_KINDS, ROUND_LENGTHS, VERDICTS } from '../../domain/quiz/question';
import { fields, id, text } from '../schemas';
import type { QuizTable } from './types';

const bands = z.array(z.enum(AGE_BANDS)).min(1);
const sources = z.array(id).min(1);

export const quizSettingsSchema = fields({
	off: z.array(z.enum(QUESTION_KINDS)).optional(),
	waits_for_s: z.number().min(60).max(3600).optional(),
});

export const QUIZ_SCHEMAS = {
	claims: fields({ verdict: z.enum(VERDICTS), bands, topic: id, specimen: id.optional(), sources }),
	questions: fields({
		bands,
		topic: id,
		specimens: z.array(id).length(3),
		right: id,
		sources: z.array(id).optional(),
	}),
	rounds: fields({
		band: z.enum(AGE_BANDS),
		length: z.literal(ROUND_LENGTHS),
		seed: z.number().int().min(0).max(9999),
	}),
} as const satisfies Record<QuizTable, z.ZodType>;

export type QuizInFile<T extends QuizTable> = z.output<(typeof QUIZ_SCHEMAS)[T]>;

export const askTextSchema = fields({
	about: text,
	ask: text,
	hint: text,
	because: text,
	why: z.record(z.string(), text),
});
export const roundTextSchema = fields({ name: text });
