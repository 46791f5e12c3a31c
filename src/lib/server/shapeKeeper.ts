import { readFile, stat } from 'node:fs/promises';
import type { PreparedShape, Preservation, ProvisionalShape } from '../content/exhibit';
import type { Logger } from './logger';
import { shapeFiles } from './shapeFiles';
import { createMemoryGate } from './memoryGate';
import { STAGE_BEGINS, type PreparingState } from './preparingState';
import { jobSize } from './prepare/jobSize';
import { readProvisional } from './prepare/provisionalShape';
import type { ReportStage, ShapeFailure, ShapeJob, ShapeOutcome, ShapeStage } from './prepare/shapeJob';

export interface ShapeKeeperOptions {
	dataDir: string;
	/** works one shape out and leaves its files in the data folder */
	prepare(job: ShapeJob, report: ReportStage): Promise<ShapeOutcome>;
	logger: Logger;
	/** called after each job that has come to an end */
	onDone(): void;
	/** bytes that all jobs at work may need together; default 1.2 GB */
	memory?: number;
	/** milliseconds, for timing jobs; default the process's clock */
	now_ms?(): number;
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
	progress(): PreparingState;
	/** Resolves when nothing is being prepared. */
	settled(): Promise<void>;
}

const MEMORY = 1.2e9;

interface Running {
	job: ShapeJob;
	work: Promise<void>;
	triangles: number;
	/** null while it waits for its turn */
	stage: ShapeStage | null;
	begun_ms: number;
}

export function createShapeKeeper({
	dataDir,
	prepare,
	logger,
	onDone,
	memory = MEMORY,
	now_ms = () => performance.now(),
}: ShapeKeeperOptions): ShapeKeeper {
	const gate = createMemoryGate(memory);
	const ready = new Map<string, { prepared: PreparedShape; pictures: Set<Preservation> }>();
	const failed = new Map<string, { failure: ShapeFailure; pictures: Set<Preservation> }>();
	const running = new Map<string, Running>();
	const timed = { triangles: 0, ms: 0 };
	let done = 0;
	let total = 0;

	function state(hash: string, preservation: Preservation): ShapeState {
		const known = ready.get(hash);
		if (known?.pictures.has(preservation)) return { is: 'ready', prepared: known.prepared };
		const wrong = failed.get(hash);
		// a provisional shape may lack the picture in another colour
		const told = wrong && (!provisionalOf(wrong.failure) || wrong.pictures.has(preservation));
		if (told) return { is: 'failed', failure: wrong.failure };
		return running.has(hash) ? { is: 'pending' } : { is: 'unknown' };
	}

	return {
		state,
		async find(hash, preservation) {
			const now = state(hash, preservation);
			if (now.is !== 'unknown') return now;
			const prepared = await readPrepared(dataDir, hash, preservation);
			if (prepared) remember(prepared, [preservation]);
			else {
				const made = await readProvisional(dataDir, hash, preservation);
				if (made) {
					const failure = { of: 'measure' as const, problem: made.problem, provisional: made.shape };
					rememberFailure(hash, failure, [preservation]);
				}
			}
			return state(hash, preservation);
		},
		request(job) {
			if (running.has(job.hash)) return;
			if (running.size === 0) done = total = 0;
			total++;
			const { triangles, memory } = jobSize(job.source);
			const work = gate
				.run(memory, () =>
					prepare(job, (stage) => {
						if (mine.stage === null) mine.begun_ms = now_ms();
						mine.stage = stage;
					}),
				)
				.catch((cause: unknown): ShapeOutcome => {
					return { ok: false, failure: { of: 'crash', message: String(cause) } };
				})
				.then((outcome) => {
					if (outcome.ok) {
						remember(outcome.prepared, job.preservations);
						time(mine);
					} else if (outcome.failure.of !== 'changed')
						rememberFailure(job.hash, outcome.failure, job.preservations);
					if (!outcome.ok && outcome.failure.of === 'crash') {
						logger.warn(`A shape could not be prepared: ${outcome.failure.message}`);
					}
					running.delete(job.hash);
					done++;
					onDone();
				});
			const mine: Running = { job, work, triangles, stage: null, begun_ms: 0 };
			running.set(job.hash, mine);
		},
		progress() {
			const all = [...running.values()];
			return {
				done: all.length === 0 ? total : done,
				total,
				current: all.flatMap(({ job, stage }) =>
					stage === null ? [] : [{ specimen: job.specimen ?? '', stage, fraction: STAGE_BEGINS[stage] }],
				),
				remaining_s: remaining(all),
			};
		},
		async settled() {
			while (running.size > 0) await Promise.all([...running.values()].map(({ work }) => work));
		},
	};

	/** Only whole jobs tell how long a triangle takes; one that found its shape there enters no stage. */
	function time({ triangles, stage, begun_ms }: Running): void {
		if (stage === null) return;
		// what lies long behind counts less and less
		timed.triangles = timed.triangles / 2 + triangles;
		timed.ms = timed.ms / 2 + (now_ms() - begun_ms);
	}

	/** By the time that each triangle took, one job after the other; a running one by its own clock too. */
	function remaining(all: readonly Running[]): number | null {
		if (all.length === 0) return 0;
		if (timed.triangles === 0) return null;
		let ms = 0;
		for (const { triangles, stage, begun_ms } of all) {
			const whole = (triangles * timed.ms) / timed.triangles;
			const spent = stage === null ? 0 : now_ms() - begun_ms;
			const atMost = stage === null ? whole : whole * (1 - STAGE_BEGINS[stage]);
			ms += Math.min(atMost, Math.max(whole * 0.05, whole - spent));
		}
		return Math.ceil(ms / 1000);
	}

	function rememberFailure(
		hash: string,
		failure: ShapeFailure,
		preservations: readonly Preservation[],
	): void {
		failed.set(hash, {
			failure,
			pictures: new Set([...(failed.get(hash)?.pictures ?? []), ...preservations]),
		});
	}

	function remember(prepared: PreparedShape, preservations: readonly Preservation[]): void {
		const known = ready.get(prepared.hash);
		const pictures = new Set([...(known?.pictures ?? []), ...preservations]);
		ready.set(prepared.hash, { prepared, pictures });
	}
}

/** The shape to mark a scan's crown on, where a failure left one. */
export const provisionalOf = (failure: ShapeFailure): ProvisionalShape | null =>
	failure.of === 'measure' ? (failure.provisional ?? null) : null;

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
