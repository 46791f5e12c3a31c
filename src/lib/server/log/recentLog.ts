import type { LogEntry } from './logLine';

/** Entries that are kept in memory for the status page. */
const KEPT = 300;

/** The last entries of the log. */
export interface RecentLog {
	add(entry: LogEntry): void;
	/** the last `most`, errors first, then warnings, then the rest; the newest first in each */
	tail(most: number): LogEntry[];
}

const RANK: Readonly<Record<string, number>> = { error: 0, warn: 1 };
const rank = ({ level }: LogEntry): number => RANK[level] ?? 2;

export function createRecentLog(earlier: readonly LogEntry[] = []): RecentLog {
	let entries: LogEntry[] = earlier.slice(-KEPT);
	return {
		add(entry) {
			entries.push(entry);
			if (entries.length > 2 * KEPT) entries = entries.slice(-KEPT);
		},
		tail(most) {
			const last = entries.slice(-KEPT);
			// old errors are worth more than new remarks, but not for ever
			const serious = last.filter((entry) => rank(entry) < 2).slice(-most);
			const rest = last.filter((entry) => rank(entry) === 2).slice(-(most - serious.length));
			const shown = serious.length >= most ? serious : [...serious, ...rest];
			return shown
				.reverse()
				.sort((a, b) => rank(a) - rank(b) || (a.time < b.time ? 1 : a.time > b.time ? -1 : 0));
		},
	};
}
