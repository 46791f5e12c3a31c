import { contentDir, dataDir } from '../dirs';
import { getServerLog } from '../log/serverLog';
import { deskFiles, type DeskFiles } from './deskFiles';

const KEY = Symbol.for('tooth-table.desk-files');

/** The process's one way to the content files for the desk, made at the first call; see `getStore`. */
export function getDeskFiles(): DeskFiles {
	const shared = globalThis as { [KEY]?: DeskFiles };
	shared[KEY] ??= deskFiles({
		contentDir: contentDir(),
		dataDir: dataDir(),
		now: Date.now,
		logger: getServerLog(),
	});
	return shared[KEY];
}
