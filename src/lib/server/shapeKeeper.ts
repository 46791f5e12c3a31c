import { readFile, stat } from 'node:fs/promises';
import type { PreparedShape, Preservation } from '../content/exhibit';
import type { Logger } from './logger';
import { shapeFiles } from './shapeFiles';
import type { ShapeFailure, ShapeJob, ShapeOutcome } from './prepare/shapeJob';

export interface ShapeKeeperOptions {
	dataDir: string;
	/** works one shape out and leaves its files in the data folder */
	prepare(job: ShapeJob): Promise<ShapeOutcome>;
	logger: Logger;
	/** called after each job that has come to an end */
	onDone(): void;
}

export type ShapeState =
	| { is: 'ready'; prepared: PreparedShape }
	| { is: 'failed'; failure: ShapeFailure }
	| { is: 'pending' }
	| { is: 'unknown' };

/** Knows which shapes are prepared, and has the missing ones prepared, each once. */
export interface ShapeKeeper {
	/** Looks in memory, then in the data folder. */
	find(hash: string, preservation: Preservation): Promise<ShapeState>;
	/** From memory only. */
	state(hash: string, preservation: Preservation): ShapeState;
	/** Has a shape prepared, unless that is under way. */
	request(job: ShapeJob): void;
	/** Counts since the queue was last empty. */
	progress(): { done: number; total: number };
	/** Resolves when nothing is being prepared. */
	settled(): Promise<void>;
}

export function createShapeKeeper({ dataDir, prepare, logger, onDone }: ShapeKeeperOptions): ShapeKeeper {
	const ready = new Map<string, { prepared: PreparedShape; pictures: Set<Preservation> }>();
	const failed = new Map<string, ShapeFailure>();
	const running = new Map<string, Promise<void>>();
	let done = 0;
	let total = 0;

	function state(hash: string, preservation: Preservation): ShapeState {
		const known = ready.get(hash);
		if (known?.pictures.has(preservation)) return { is: 'ready', prepared: known.prepared };
		const failure = failed.get(hash);
		if (failure) return { is: 'failed', failure };
		return running.has(hash) ? { is: 'pending' } : { is: 'unknown' };
	}

	return {
		state,
		async find(hash, preservation) {
			const now = state(hash, preservation);
			if (now.is !== 'unknown') return now;
			const prepared = await readPrepared(dataDir, hash, preservation);
			if (prepared) remember(prepared, [preservation]);
			return state(hash, preservation);
		},
		request(job) {
			if (running.has(job.hash)) return;
			if (running.size === 0) done = total = 0;
			total++;
			const work = prepare(job)
				.catch((cause: unknown): ShapeOutcome => {
					return { ok: false, failure: { of: 'crash', message: String(cause) } };
				})
				.then((outcome) => {
					if (outcome.ok) remember(outcome.prepared, job.preservations);
					else if (outcome.failure.of !== 'changed') failed.set(job.hash, outcome.failure);
					if (!outcome.ok && outcome.failure.of === 'crash') {
						logger.warn(`A shape could not be prepared: ${outcome.failure.message}`);
					}
					running.delete(job.hash);
					done++;
					onDone();
				});
			running.set(job.hash, work);
		},
		progress: () => (running.size === 0 ? { done: total, total } : { done, total }),
		async settled() {
			while (running.size > 0) await Promise.all(running.values());
		},
	};

	function remember(prepared: PreparedShape, preservations: readonly Preservation[]): void {
		const known = ready.get(prepared.hash);
		const pictures = new Set([...(known?.pictures ?? []), ...preservations]);
		ready.set(prepared.hash, { prepared, pictures });
	}
}

/** What an earlier run left in the data folder; null where anything is missing or unreadable. */
export async function readPrepared(
	dataDir: string,
	hash: string,
	preservation: Preservation,
): Promise<PreparedShape | null> {
	const files = shapeFiles(dataDir, hash);
	try {
		const [facts] = await Promise.all([
			readFile(files.facts, 'utf8'),
			stat(files.glb),
			stat(files.picture(preservation)),
		]);
		const prepared = JSON.parse(facts) as PreparedShape;
		return prepared.hash === hash ? prepared : null;
	} catch {
		return null;
	}
}
