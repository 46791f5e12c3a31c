import type { ScreenRegistry } from '../screens/screenRegistry';
import type { ServerLog } from '../log/serverLog';
import type { ExhibitStore } from '../exhibitStore';
import { healthOf, type Health } from '../healthOf';
import { machineState, type MachineState } from './machineState';

/** Everything that /healthz tells: no secrets, no names of screens, nothing of visitors. Keys are only ever added. */
export interface ServerHealth extends Health, MachineState {
	/** of the program */
	version: string;
	/** how many screens are in which state */
	screens: { well: number; late: number; hung: number; closed: number };
	/** lines of the log that the disk would not take since the start */
	log: { lost: number };
}

export async function serverHealth(
	store: Pick<ExhibitStore, 'current' | 'problems' | 'preparing'>,
	screens: Pick<ScreenRegistry, 'list'>,
	log: Pick<ServerLog, 'file'>,
	about: { version: string; dataDir: string; contentDir: string; uptime_s: number },
): Promise<ServerHealth> {
	const count = { well: 0, late: 0, hung: 0, closed: 0 };
	for (const { health } of screens.list()) count[health]++;
	return {
		...healthOf(store, about.uptime_s),
		version: about.version,
		...(await machineState(about)),
		screens: count,
		log: { lost: log.file.lost },
	};
}
