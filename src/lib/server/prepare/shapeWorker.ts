/**
 * Entry of a preparing thread. The same module is imported by the main thread for its address only:
 * whatever a bundler makes of it, the thread starts from the file that this code ended up in.
 */
import { readFile } from 'node:fs/promises';
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { SHAPE_WORKER } from './shapeWorkerMark';
import type { LookJob } from '../uploads/lookInThread';
import type { ShapeJob, ShapeOutcome } from './shapeJob';

export const shapeWorkerUrl: string = import.meta.url;

if (!isMainThread && parentPort && (workerData as { mark?: string } | null)?.mark === SHAPE_WORKER) {
	const port = parentPort;
	port.on('message', (job: ShapeJob | LookJob) => {
		if ('look' in job) {
			void Promise.all([import('../uploads/lookAtScan'), readFile(job.look)]).then(
				async ([{ lookAtScan }, bytes]) => port.postMessage(await lookAtScan(bytes, job.name)),
			);
			return;
		}
		void import('./runShapeJob')
			.then(({ runShapeJob }) => runShapeJob(job, (stage) => port.postMessage({ stage })))
			.catch((cause: unknown): ShapeOutcome => ({
				ok: false,
				failure: { of: 'crash', message: String(cause) },
			}))
			.then((outcome) => port.postMessage(outcome));
	});
}
