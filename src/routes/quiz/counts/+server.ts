import { quizCountsSchema, quizEntries } from '$lib/server/counts/quizCounts';
import { takeCounts } from '$lib/server/counts/takeCounts';
import type { RequestHandler } from './$types';

/** Takes anonymous counts of a quiz. */
export const POST: RequestHandler = takeCounts(quizCountsSchema, quizEntries);
