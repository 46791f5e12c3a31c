/** What anonymous use is made of; a server takes nothing that does not stand here or among the exhibit's own ids. */

/** Places where a visitor can be, each with its steps. */
export const USE_STEPS = {
	start: ['choosing'],
	compare: ['table'],
	feeding: ['shape', 'bite', 'size', 'ours', 'jaw', 'ridges'],
	replacement: ['life', 'jaw', 'diary', 'count', 'wear', 'shed'],
	quiz: ['set-up', 'question', 'summary', 'sheet'],
	'which-animal': ['table'],
	talks: ['table'],
} as const satisfies Readonly<Record<string, readonly string[]>>;
export type UseRoom = keyof typeof USE_STEPS;
export const USE_ROOMS = Object.keys(USE_STEPS) as UseRoom[];

/** How a visit ended: nobody touched any more and all went back to the start, or the page was closed. */
export const USE_ENDS = ['reset', 'closed'] as const;
export type UseEnd = (typeof USE_ENDS)[number];

/** What a visitor had set at some time of the visit. */
export const USE_SETTINGS = [
	'text-larger',
	'text-largest',
	'high-contrast',
	'calm',
	'low-layout',
	'sound-off',
	'read-aloud',
] as const;
export type UseSetting = (typeof USE_SETTINGS)[number];

/** The room of an address; null for pages that are none of the visitor's. */
export function useRoom(path: string): UseRoom | null {
	const [, first = ''] = path.split('/');
	if (first === '') return 'start';
	return USE_ROOMS.find((room) => room === first) ?? null;
}
