import { z } from 'zod';
import type { TryRequest } from '../../content/specimenDesk';
import { FIELD_PATHS } from './fieldPaths';

const MOST = 100_000;
const word = z.string().max(2_000);
const labelEdits = z.strictObject({
	title: word.optional(),
	short: word.optional(),
	alt: word.optional(),
	text: z.string().max(MOST).optional(),
	features: z.record(z.string().regex(/^[a-z0-9-]{1,60}$/), word).optional(),
});
const { sources: _, ...single } = FIELD_PATHS;
const schema = z.strictObject({
	lang: z.string().max(10),
	files: z
		.array(
			z.strictObject({
				path: z.string().max(300),
				base: z.string().nullable(),
				exact: z.string().max(MOST).nullable(),
			}),
		)
		.max(60),
	edits: z.strictObject({
		facts: z
			.strictObject({
				...Object.fromEntries(Object.keys(single).map((name) => [name, word.optional()])),
				sources: z.array(word).max(200).optional(),
			})
			.optional(),
		labels: z.record(z.string().regex(/^[a-z]{2,3}$/), labelEdits).optional(),
	}),
});

/** What the page of a specimen sends while one types; null where it is anything else, or of another specimen's files. */
export function parseTry(body: unknown, id: string): TryRequest | null {
	const parsed = schema.safeParse(body);
	if (!parsed.success) return null;
	const mine = parsed.data.files.every(({ path }) =>
		new RegExp(`^specimens/${id}/(specimen\\.yaml|label\\.[a-z]{2,3}\\.md)$`).test(path),
	);
	return mine ? (parsed.data as TryRequest) : null;
}
