import { z } from 'zod';
import { ROOMS } from '../../content/exhibit';
import { SCREEN_DOES, TOUCHED_min, type ScreenBeat } from '../../content/screens/beat';
import { SCREEN_NAME } from '../../content/screens/shownOn';

const name = z.string().max(60).regex(SCREEN_NAME).nullable();
const page = z.string().regex(/^[0-9a-f]{16}$/);
const some = z.number().min(0).max(1e9);
const ms = z.number().min(0).max(600_000);

/** What a screen may say of itself; everything else is refused. */
export const beatSchema = z.strictObject({
	name,
	page,
	uptime_s: some,
	state: z.enum(SCREEN_DOES),
	hidden: z.boolean(),
	leaving: z.boolean(),
	touched_min: z.union(TOUCHED_min.map((minutes) => z.literal(minutes))).nullable(),
	room: z.enum(['start', ...ROOMS, 'other']),
	exhibit: z
		.string()
		.regex(/^[0-9a-f]{8,64}$/)
		.nullable(),
	version: z.string().max(60),
	frames: z.strictObject({ count: some, median_ms: ms, p95_ms: ms }).nullable(),
	quality: z.number().min(0).max(4).nullable(),
	heap_MB: some.nullable(),
	geometries: some,
	textures: some,
	contexts: some,
	losses: some,
	errors: z.strictObject({ count: some, last: z.string().max(200).nullable() }),
}) satisfies z.ZodType<ScreenBeat>;

/** A worker's word that its page no longer answers. */
export const hungSchema = z.strictObject({ name, page });
