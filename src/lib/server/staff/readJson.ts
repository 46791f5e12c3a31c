import type { z } from 'zod';

/** A JSON body of the expected form, else null. */
export async function readJson<T>(request: Request, schema: z.ZodType<T>): Promise<T | null> {
	if (!/^application\/json\b/i.test(request.headers.get('content-type') ?? '')) return null;
	const read = schema.safeParse(await request.json().catch(() => null));
	return read.success ? read.data : null;
}

export const answer = (body: object | null, status: number = 200): Response =>
	Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
