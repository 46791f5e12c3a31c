import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { writeAtomically } from '../writeAtomically';
import type { ScreenHealth, ScreenReport } from './screenRegistry';

/** What whoever starts a screen's browser may read of it, in a file and at `/screens/NAME`. */
export interface ScreenNote {
	name: string;
	health: ScreenHealth;
	/** the browser has to be started anew: the page no longer answers */
	restart_browser: boolean;
	/** ISO 8601, UTC */
	last_beat: string;
	page: string;
	uptime_s: number;
}

export const screenNote = (report: ScreenReport, now_ms: number): ScreenNote => ({
	name: report.name ?? report.key,
	health: report.health,
	restart_browser: report.health === 'hung',
	last_beat: new Date(now_ms - report.age_s * 1000).toISOString(),
	page: report.beat.page,
	uptime_s: Math.round(report.beat.uptime_s),
});

/** Keeps `DATA_DIR/screens/NAME.json` for each screen with a name; a disk that takes nothing changes nothing else. */
export function createScreenFiles(dataDir: string, onTrouble: (cause: unknown) => void) {
	const writing = new Map<string, Promise<void>>();
	const pathOf = (name: string) => join(dataDir, 'screens', `${name}.json`);
	const queue = (name: string, step: () => Promise<void>): Promise<void> => {
		const next = (writing.get(name) ?? Promise.resolve()).then(step).catch(onTrouble);
		writing.set(name, next);
		return next.finally(() => {
			if (writing.get(name) === next) writing.delete(name);
		});
	};
	return {
		write(report: ScreenReport): Promise<void> {
			const { name } = report;
			if (name === null) return Promise.resolve();
			const text = `${JSON.stringify(screenNote(report, Date.now()))}\n`;
			return queue(name, () => writeAtomically(pathOf(name), text));
		},
		remove({ name }: ScreenReport): Promise<void> {
			return name === null ? Promise.resolve() : queue(name, () => rm(pathOf(name), { force: true }));
		},
	};
}
