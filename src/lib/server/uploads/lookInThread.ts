import type { ScanLook } from '../../content/scanUpload';
import { fail, type Result } from '../../domain/result';
import { startShapeWorker } from '../prepare/workerPool';
import type { LookProblem } from './lookAtScan';

/** What a preparing thread is asked beside shapes. */
export interface LookJob {
	/** the uploaded file */
	look: string;
	name: string;
}

/** A scan that takes longer is not looked at any more; half a million triangles take about 2 s. */
const MOST_MS = 120_000;

/**
 * Looks at a scan in a thread of its own, so that the gallery's screens are served meanwhile and a scan that takes all of
 * the memory takes only the thread with it.
 */
export function lookInThread(path: string, name: string): Promise<Result<ScanLook, LookProblem>> {
	const gone = (): Result<ScanLook, LookProblem> =>
		fail({
			id: 'scan-too-large',
			data: {
				scan: name,
				code: 'too-large',
				found: 'Reading it took too much time or memory.',
				advice: 'Save the scan with fewer triangles; half a million show every detail of a tooth.',
			},
		});
	return new Promise((resolve) => {
		const worker = startShapeWorker();
		const end = (looked: Result<ScanLook, LookProblem>): void => {
			clearTimeout(timer);
			resolve(looked);
			void worker.terminate();
		};
		const timer = setTimeout(() => end(gone()), MOST_MS);
		worker.on('message', end);
		worker.on('error', () => end(gone()));
		worker.on('exit', () => end(gone()));
		worker.postMessage({ look: path, name } satisfies LookJob);
	});
}
