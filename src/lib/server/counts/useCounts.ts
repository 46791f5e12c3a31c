import { z } from 'zod';
import type { Exhibit } from '../../content/exhibit';
import { DWELL_BUCKETS } from '../../domain/use/dwell';
import { USE_ENDS, USE_ROOMS, USE_SETTINGS, USE_STEPS } from '../../domain/use/useFacts';
import type { Tally } from './countsStore';

/** ids as the content folder makes them: nothing that anybody typed fits */
const id = z
	.string()
	.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
	.max(80);
const room = z.enum(USE_ROOMS);
const dwell = z.enum(DWELL_BUCKETS);

/** What a screen sends when a room is left and when a visit ends. */
export const useCountsSchema = z.strictObject({
	/** a random name for this sending, so that sending it again counts nothing twice; kept for a day, tells nothing */
	batch: z.uuid(),
	/** name of the screen, where it has one */
	screen: id.optional(),
	rooms: z.array(z.strictObject({ room, dwell })).max(10),
	teeth: z.array(z.strictObject({ room, specimen: id, laid: z.boolean(), dwell })).max(60),
	left: z
		.array(
			z
				.strictObject({ room, step: id, by: z.enum(USE_ENDS) })
				.refine((one) => (USE_STEPS[one.room] as readonly string[]).includes(one.step)),
		)
		.max(1),
	languages: z
		.array(
			z
				.string()
				.regex(/^[a-z]+(-[a-z0-9]+)*$/i)
				.max(20),
		)
		.max(20),
	settings: z.array(z.enum(USE_SETTINGS)).max(USE_SETTINGS.length),
});
export type UseSent = z.infer<typeof useCountsSchema>;

type Known = Pick<Exhibit, 'specimens' | 'languages' | 'counts' | 'screens'>;

/**
 * The same as entries of the counts, each by itself: nothing ties those of one visit together. Teeth,
 * languages and screens that this exhibit does not have are left out. Null where use is not counted, or nothing is known to count it by.
 */
export function useEntries(sent: UseSent, exhibit: Known | null): Pick<Tally, 'kind' | 'facts'>[] | null {
	if (!exhibit || exhibit.counts?.use === false) return null;
	const specimens = new Set(exhibit.specimens.map((specimen) => specimen.id));
	const languages = new Set(exhibit.languages.map(({ code }) => code));
	const named = exhibit.screens?.find((one) => one.id === sent.screen);
	const screen: Record<string, string> = named ? { screen: named.id } : {};
	return [
		...sent.rooms.map((facts) => ({ kind: 'use-room' as const, facts })),
		...sent.teeth
			.filter(({ specimen }) => specimens.has(specimen))
			.map((facts) => ({ kind: 'use-tooth' as const, facts })),
		...sent.left.map((facts) => ({ kind: 'use-left' as const, facts: { ...facts, ...screen } })),
		...sent.languages
			.filter((language) => languages.has(language))
			.map((language) => ({ kind: 'use-language' as const, facts: { language } })),
		...sent.settings.map((setting) => ({ kind: 'use-setting' as const, facts: { setting } })),
	];
}
