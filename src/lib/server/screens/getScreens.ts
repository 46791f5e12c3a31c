import { dataDir } from '../getStore';
import { getServerLog } from '../log/serverLog';
import { createScreenFiles } from './screenFiles';
import { createScreenRegistry, type ScreenRegistry } from './screenRegistry';

const KEY = Symbol.for('tooth-table.screens');
const TICK_ms = 5_000;

const SAID: Readonly<Record<string, string>> = {
	well: 'is there',
	late: 'has missed its beats and is asked to restart',
	hung: 'no longer answers',
	closed: 'has been closed',
};

/** The process's one register of screens, made at the first call. */
export function getScreens(): ScreenRegistry {
	const shared = globalThis as { [KEY]?: ScreenRegistry };
	if (!shared[KEY]) {
		const log = getServerLog();
		let troubled = false;
		const files = createScreenFiles(dataDir(), (cause) => {
			if (!troubled)
				log.warn(`The state of a screen could not be written: ${String(cause)}`, { event: 'screen-file' });
			troubled = true;
		});
		shared[KEY] = createScreenRegistry({
			now: () => performance.now(),
			onChange(report, what) {
				if (what === 'forgotten') return void files.remove(report);
				if (what === 'health' && report.name !== null) {
					const { health, name } = report;
					const say = health === 'late' || health === 'hung' ? 'warn' : 'info';
					log[say](`The screen ${name} ${SAID[health]}.`, { event: `screen-${health}`, screen: name });
				}
				void files.write(report);
			},
		});
		const screens = shared[KEY];
		setInterval(() => screens.tick(), TICK_ms).unref();
	}
	return shared[KEY];
}
