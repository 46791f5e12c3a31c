import type { Feeding, FeedingWords } from '../content/feedingContent';

/**
 * The folder `feeding/` as its files say now; where a file of it has an error, what is lost keeps its last good version.
 * `wrong` says whether any file of the folder, or the sources, has an error.
 */
export function composeFeeding(
	now: Feeding | undefined,
	last: Feeding | undefined,
	wrong: boolean,
): Feeding | undefined {
	if (!wrong || !last) return now;
	if (!now) return last;
	const kept = <T extends { id: string }>(fresh: T[], old: T[]): T[] => [
		...fresh,
		...old.filter(({ id }) => !fresh.some((item) => item.id === id)),
	];
	const words: Record<string, FeedingWords> = { ...now.words };
	for (const [code, before] of Object.entries(last.words)) {
		const own = words[code];
		words[code] = own
			? {
					corners: own.corners,
					guilds: { ...before.guilds, ...own.guilds },
					materials: { ...before.materials, ...own.materials },
					prey: { ...before.prey, ...own.prey },
					jaws: { ...before.jaws, ...own.jaws },
					ridges: { ...before.ridges, ...own.ridges },
					everyday: { ...before.everyday, ...own.everyday },
				}
			: before;
	}
	return {
		thresholds: now.thresholds,
		crown: now.crown,
		materials: kept(now.materials, last.materials),
		guilds: kept(now.guilds, last.guilds),
		prey: kept(now.prey, last.prey),
		jaws: kept(now.jaws, last.jaws),
		ridges: kept(now.ridges, last.ridges),
		everyday: kept(now.everyday, last.everyday),
		words,
	};
}

/** Ids of all sources that the folder rests on. */
export function feedingSources(feeding: Feeding | undefined): string[] {
	const found: string[] = [];
	const visit = (value: unknown, key: string): void => {
		if (typeof value === 'string') {
			if (/sources?(For|Against)?$/i.test(key)) found.push(value);
		} else if (Array.isArray(value)) value.forEach((item) => visit(item, key));
		else if (typeof value === 'object' && value !== null) {
			for (const [name, item] of Object.entries(value)) visit(item, name);
		}
	};
	if (feeding) visit({ ...feeding, words: {} }, '');
	return found;
}
