import type { z } from 'zod';
import { rateLimit } from '../rateLimit';
import { sameOrigin } from '../sameOrigin';
import type { Tally } from './countsStore';
import { getCounts, today } from './getCounts';

const MOST_BYTES = 32_000;
/** a class answers every few seconds; fifty screens may do so at once */
const MOST_A_MINUTE = 1500;

type Entries = Pick<Tally, 'kind' | 'facts'>[];

/**
 * Takes anonymous counts of one kind: 204 once they are on the disk, so that the screen may forget them. `entries` gives
 * null where they are not wanted: the screen need not try again.
 */
export function takeCounts<Sent extends { batch: string }>(
	schema: z.ZodType<Sent>,
	entries: (sent: Sent) => Entries | null,
): (event: { request: Request }) => Promise<Response> {
	const pass = rateLimit(MOST_A_MINUTE, 60_000);
	return async ({ request }) => {
		if (!sameOrigin(request)) return answer(403);
		if (!pass()) return answer(429);
		const text = await request.text();
		if (text.length > MOST_BYTES) return answer(413);
		const read = schema.safeParse(parsed(text));
		if (!read.success) return answer(400);
		const counts = getCounts();
		// where nothing can be kept, the screen need not try again
		const wanted = counts && entries(read.data);
		if (!counts || !wanted) return answer(204);
		try {
			await counts.add(read.data.batch, today(), wanted);
			return answer(204);
		} catch {
			return answer(503);
		}
	};
}

const answer = (status: number): Response =>
	new Response(null, { status, headers: { 'cache-control': 'no-store' } });

function parsed(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return null;
	}
}
