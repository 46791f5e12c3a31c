import { getCounts, today } from '$lib/server/counts/getCounts';
import { quizCountsSchema, quizEntries } from '$lib/server/counts/quizCounts';
import { rateLimit } from '$lib/server/rateLimit';
import { sameOrigin } from '$lib/server/sameOrigin';
import type { RequestHandler } from './$types';

const MOST_BYTES = 32_000;
/** a class answers every few seconds; fifty screens may do so at once */
const pass = rateLimit(1500, 60_000);

const answer = (status: number): Response =>
	new Response(null, { status, headers: { 'cache-control': 'no-store' } });

/** Takes anonymous counts of a quiz: 204 once they are on the disk, so that the screen may forget them. */
export const POST: RequestHandler = async ({ request }) => {
	if (!sameOrigin(request)) return answer(403);
	if (!pass()) return answer(429);
	const text = await request.text();
	if (text.length > MOST_BYTES) return answer(413);
	const read = quizCountsSchema.safeParse(parsed(text));
	if (!read.success) return answer(400);
	const counts = getCounts();
	// where nothing can be kept, the screen need not try again
	if (!counts) return answer(204);
	try {
		await counts.add(read.data.batch, today(), quizEntries(read.data));
		return answer(204);
	} catch {
		return answer(503);
	}
};

function parsed(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return null;
	}
}
