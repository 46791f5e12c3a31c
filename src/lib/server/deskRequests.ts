import { z } from 'zod';
import type { FileChange } from '../content/deskFiles';

/** Longest text that a page sends, signs. */
const MOST = 200_000;

const change = z.strictObject({
	path: z.string().max(300),
	base: z.string().max(64).nullable(),
	text: z.string().max(MOST).nullable(),
	typed: z.boolean().optional(),
});
const what = z.strictObject({
	code: z.string().regex(/^[a-z-]{1,40}$/),
	data: z.record(z.string().max(40), z.union([z.string().max(300), z.number()])).optional(),
});
const save = z.strictObject({
	changes: z.array(change).min(1).max(60),
	evenIfBroken: z.boolean().optional(),
	what,
});
const check = z.strictObject({ changes: z.array(change).min(1).max(60) });
const restore = z.strictObject({
	versionId: z.string().max(100),
	path: z.string().max(300).optional(),
	side: z.enum(['before', 'after']),
	scope: z.enum(['version', 'folder']),
	evenIfBroken: z.boolean().optional(),
});

/** What a page sends to have texts saved; null where it is anything else. */
export const parseSave = (body: unknown) => parsed(save, body);
/** What a page sends to hear what the check would say; null where it is anything else. */
export const parseCheck = (body: unknown): { changes: FileChange[] } | null => parsed(check, body);
/** What a page sends to have an earlier version brought back; null where it is anything else. */
export const parseRestore = (body: unknown) => parsed(restore, body);

function parsed<T>(schema: z.ZodType<T>, body: unknown): T | null {
	const found = schema.safeParse(body);
	return found.success ? found.data : null;
}
