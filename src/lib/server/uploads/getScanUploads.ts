import { MOST_SCAN_BYTES } from '../../content/scanUpload';
import { dataDir } from '../dirs';
import { lookInThread } from './lookInThread';
import { scanUploads, type ScanUploads } from './scanUploads';

const KEY = Symbol.for('tooth-table.scan-uploads');

/** The process's one place for uploaded scans, made and swept at the first call; see `getStore`. */
export function getScanUploads(): ScanUploads {
	const shared = globalThis as { [KEY]?: ScanUploads };
	if (!shared[KEY]) {
		shared[KEY] = scanUploads({
			dataDir: dataDir(),
			now: Date.now,
			look: lookInThread,
			mostBytes: MOST_SCAN_BYTES,
		});
		void shared[KEY].sweep();
	}
	return shared[KEY];
}
