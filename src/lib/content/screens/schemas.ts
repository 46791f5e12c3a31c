import { z } from 'zod';
import { ROOMS } from '../exhibit';
import { fields, screenSchema, text } from '../schemas';
import { WEEKDAYS } from './types';

/** `9:30`, `18:00`, `24:00` */
export const TIME_PATTERN = /^(([01]?\d|2[0-3]):[0-5]\d|24:00)$/;
const time = z.string().regex(TIME_PATTERN);

export const screenEntrySchema = fields({
	title: text,
	rooms: z.array(z.enum(ROOMS)).min(1).optional(),
	screen: screenSchema.optional(),
	volume_percent: z.number().min(0).max(100).optional(),
	reach: z.enum(['usual', 'low']).optional(),
	first_language: text.optional(),
	printer: z.boolean().optional(),
	hours: z
		.array(
			fields({
				days: z.array(z.enum(WEEKDAYS)).min(1),
				from: time,
				dim_from: time.optional(),
				until: time,
			}),
		)
		.min(1)
		.optional(),
	reload_at: time.optional(),
	stays_lit_min: z.number().min(1).max(240).optional(),
});

export type ScreenInFile = z.output<typeof screenEntrySchema>;
