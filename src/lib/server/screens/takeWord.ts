import type { z } from 'zod';
import { rateLimit } from '../rateLimit';
import { sameOrigin } from '../sameOrigin';

const MOST_BYTES = 8_000;
/** Fifty screens say two things a minute; each has ten times as much room. */
const pass = rateLimit(1_000, 60_000);

/** Reads what a screen says of itself and hands it on; 204, or why not. */
export async function takeWord<T>(
	request: Request,
	schema: z.ZodType<T>,
	take: (word: T) => void,
): Promise<Response> {
	const answer = (status: number) => new Response(null, { status, headers: { 'cache-control': 'no-store' } });
	if (!sameOrigin(request)) return answer(403);
	if (!pass()) return answer(429);
	const text = await request.text();
	if (text.length > MOST_BYTES) return answer(413);
	let said: unknown;
	try {
		said = JSON.parse(text);
	} catch {
		return answer(400);
	}
	const word = schema.safeParse(said);
	if (!word.success) return answer(400);
	take(word.data);
	return answer(204);
}
