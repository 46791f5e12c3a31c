import { apart, type Crest } from './crests';

/** Crests of successive sections that stand over one another. */
export interface Line {
	/** number of each level, rising, and its crest */
	levels: number[];
	crests: Crest[];
}

/** How far a line may move round the section from one level to the next, degrees. */
const DRIFT_DEG = 3.2;
/** A line may be missing at so many levels and go on. */
const GAP_LEVELS = 5;
/** Pieces of a line this far apart are joined. */
const JOINED_LEVELS = 15;
const JOINED_DEG = 5;

/** Joins the crests of each level to lines; `levels` holds the crests of each, from low to high. */
export function trackLines(levels: readonly (readonly Crest[])[]): Line[] {
	const done: Line[] = [];
	let open: Line[] = [];
	levels.forEach((found, level) => {
		const pairs: { line: Line; crest: Crest; gap: number }[] = [];
		for (const line of open) {
			const last = line.crests[line.crests.length - 1];
			const skipped = level - line.levels[line.levels.length - 1];
			for (const crest of found) {
				const gap = apart(last.direction_deg, crest.direction_deg);
				if (gap <= DRIFT_DEG * Math.min(2, skipped)) pairs.push({ line, crest, gap });
			}
		}
		pairs.sort((a, b) => a.gap - b.gap);
		const taken = new Set<Line | Crest>();
		for (const { line, crest } of pairs) {
			if (taken.has(line) || taken.has(crest)) continue;
			taken.add(line).add(crest);
			line.levels.push(level);
			line.crests.push(crest);
		}
		for (const crest of found) if (!taken.has(crest)) open.push({ levels: [level], crests: [crest] });
		const ended = (line: Line): boolean => level - line.levels[line.levels.length - 1] > GAP_LEVELS;
		done.push(...open.filter(ended));
		open = open.filter((line) => !ended(line));
	});
	return join([...done, ...open]);
}

/** Pieces of one line that stand over one another with a gap between them become one. */
function join(pieces: Line[]): Line[] {
	const lines = [...pieces].sort((a, b) => a.levels[0] - b.levels[0]);
	for (let i = 0; i < lines.length; i++) {
		for (;;) {
			const below = lines[i];
			const end = below.levels[below.levels.length - 1];
			const last = below.crests[below.crests.length - 1].direction_deg;
			const next = lines.findIndex(
				(line, j) =>
					j > i &&
					line.levels[0] > end &&
					line.levels[0] - end <= JOINED_LEVELS &&
					apart(last, line.crests[0].direction_deg) <= JOINED_DEG,
			);
			if (next < 0) break;
			below.levels.push(...lines[next].levels);
			below.crests.push(...lines[next].crests);
			lines.splice(next, 1);
		}
	}
	return lines;
}
