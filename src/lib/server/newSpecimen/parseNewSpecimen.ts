import { z } from 'zod';
import { CERTAINTIES, PARTS, PRESERVATIONS } from '../../content/exhibit';
import { ASKED_UNITS, type NewSpecimen } from '../../content/newSpecimen';
import { ID_PATTERN } from '../../content/schemas';

const line = z
	.string()
	.max(500)
	.refine((text) => !/\p{Cc}/u.test(text));
const size = z.number().min(0.01).max(10_000);
const id = z.string().regex(ID_PATTERN).max(60);

const schema = z.strictObject({
	id,
	accession: line.refine((text) => text.trim() !== ''),
	group: id,
	part: z.enum(PARTS),
	preservation: z.enum(PRESERVATIONS),
	bed: z.union([z.literal(''), id]),
	by: line,
	certainty: z.enum(CERTAINTIES),
	licence: line,
	rightsHolder: line,
	sources: z.array(id).max(40),
	title: line,
	short: line,
	alt: line,
	text: z.string().max(20_000),
	shape: z.discriminatedUnion('kind', [
		z.strictObject({
			kind: z.literal('scan'),
			upload: z.string().max(40),
			units: z.enum(ASKED_UNITS),
			crownHeight_mm: size.nullable(),
		}),
		z.strictObject({
			kind: z.literal('model'),
			like: id,
			crownHeight_mm: size,
			baseLength_mm: size,
			baseWidth_mm: size,
		}),
	]),
});

/** What a page sends to have a specimen made; null where it is anything else. */
export function parseNewSpecimen(body: unknown): NewSpecimen | null {
	const parsed = schema.safeParse(body);
	return parsed.success ? parsed.data : null;
}
