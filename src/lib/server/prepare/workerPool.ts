import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { SHAPE_WORKER } from './shapeWorkerMark';
import { shapeWorkerUrl } from './shapeWorker';
import type { ReportStage, ShapeJob, ShapeOutcome, ShapeStage } from './shapeJob';

/** An idle thread is let go after this, so that a big scan's memory does not stay. */
const IDLE_MS = 5_000;

export interface WorkerPool {
	/** `report` is told whenever the job enters another stage. */
	run(job: ShapeJob, report?: ReportStage): Promise<ShapeOutcome>;
	close(): Promise<void>;
}

interface Thread {
	worker: Worker;
	busy: ((outcome: ShapeOutcome) => void) | null;
	report: ReportStage | undefined;
	idle: NodeJS.Timeout | null;
}

/**
 * Threads that prepare shapes, one core left to the server; made when first needed. A thread that
 * dies (out of memory, say) fails its own job only.
 */
export function createWorkerPool(size: number = Math.max(1, availableParallelism() - 1)): WorkerPool {
	const threads = new Set<Thread>();
	const waiting: { job: ShapeJob; report?: ReportStage; done: (outcome: ShapeOutcome) => void }[] = [];
	let closed = false;

	function start(): Thread {
		const thread: Thread = { worker: startShapeWorker(), busy: null, report: undefined, idle: null };
		threads.add(thread);
		const fell = (message: string): void => {
			if (!threads.delete(thread)) return;
			thread.busy?.({ ok: false, failure: { of: 'crash', message } });
			next();
		};
		thread.worker.on('message', (message: ShapeOutcome | { stage: ShapeStage }) => {
			if ('stage' in message) return thread.report?.(message.stage);
			const done = thread.busy;
			thread.busy = null;
			done?.(message);
			next();
			if (!thread.busy) rest(thread);
		});
		thread.worker.on('error', (cause: Error) => fell(cause.message));
		thread.worker.on('exit', (code) => fell(`the thread ended with ${code}`));
		return thread;
	}

	function rest(thread: Thread): void {
		thread.worker.unref();
		thread.idle = setTimeout(() => {
			threads.delete(thread);
			void thread.worker.terminate();
		}, IDLE_MS);
		thread.idle.unref();
	}

	function next(): void {
		while (waiting.length > 0 && !closed) {
			const free = [...threads].find((thread) => !thread.busy) ?? (threads.size < size ? start() : null);
			if (!free) return;
			const { job, report, done } = waiting.shift()!;
			if (free.idle) clearTimeout(free.idle);
			free.idle = null;
			free.busy = done;
			free.report = report;
			free.worker.ref();
			free.worker.postMessage(job);
		}
	}

	return {
		run(job, report) {
			return new Promise((resolve) => {
				if (closed) return resolve({ ok: false, failure: { of: 'changed' } });
				waiting.push({ job, report, done: resolve });
				next();
			});
		},
		async close() {
			closed = true;
			for (const { done } of waiting.splice(0)) done({ ok: false, failure: { of: 'changed' } });
			await Promise.all(
				[...threads].map((thread) => {
					threads.delete(thread);
					if (thread.idle) clearTimeout(thread.idle);
					thread.busy?.({ ok: false, failure: { of: 'changed' } });
					return thread.worker.terminate();
				}),
			);
		},
	};
}

/**
 * From a build the thread runs the built file. From the sources (development and tests) Node cannot
 * read TypeScript by itself, so the thread first loads the development tool that can.
 */
export function startShapeWorker(): Worker {
	const options = { workerData: { mark: SHAPE_WORKER }, execArgv: [], stdout: false, stderr: false };
	if (!shapeWorkerUrl.endsWith('.ts')) return new Worker(new URL(shapeWorkerUrl), options);
	const loader = createRequire(shapeWorkerUrl)
		.resolve('tsx/esm/api')
		.replace(/\.cjs$/, '.mjs');
	const boot = `import(${JSON.stringify(pathToFileURL(loader).href)})
		.then((loader) => { loader.register(); return import(${JSON.stringify(shapeWorkerUrl)}); })
		.catch((cause) => setImmediate(() => { throw cause; }));`;
	return new Worker(boot, { ...options, eval: true });
}
