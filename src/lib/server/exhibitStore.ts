import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { ContentReader, ExhibitDraft, SpecimenDraft } from '../content/draft';
import type { Exhibit, PreparedShape, ProvisionalShape } from '../content/exhibit';
import { withFile } from '../content/contentFiles';
import { FILE_START } from '../content/finding';
import { measureFindings } from '../content/measureFindings';
import { createContentCache, loadContent } from '../content/loadContent';
import type { Problem } from '../content/problem';
import { composeExhibit } from './composeExhibit';
import { dayIn } from '../content/shown/isShown';
import { fsReader, pathInside } from './fsReader';
import type { Logger } from './logger';
import type { ReportStage, ShapeFailure, ShapeJob, ShapeOutcome } from './prepare/shapeJob';
import { createWorkerPool } from './prepare/workerPool';
import { scanFormat } from './scan/readScan';
import { formHash, scanHash, sha256OfFile } from './shapeHash';
import type { PreparingState } from './preparingState';
import { needsPolling } from './needsPolling';
import { pruneShapes } from './pruneShapes';
import { createShapeKeeper, provisionalOf } from './shapeKeeper';
import { shownExhibit } from './shownExhibit';
import { placesIn, shapeProblem } from './shapeProblem';
import { listingHash, readSnapshot, writeSnapshot } from './snapshotFile';
import { watchContent } from './watchContent';

export interface ExhibitStoreOptions {
	contentDir: string;
	/** where prepared shapes and the last good exhibit are kept */
	dataDir: string;
	logger: Logger;
	watch: boolean;
	/** milliseconds since 1970; default: the computer's clock */
	now?: () => number;
	/** called each time the folder has been read and what it says is shown */
	onRead?: () => void;
	/** works out one shape; default: in threads of its own */
	prepare?: (job: ShapeJob, report: ReportStage) => Promise<ShapeOutcome>;
}

/** The exhibit as it stands in the content folder, kept up to date, always the last good one. */
export interface ExhibitStore {
	/** The folder has been read and its shapes are prepared, or an earlier exhibit is there to show meanwhile. */
	readonly ready: Promise<void>;
	/** Aborted when the store closes. */
	readonly closing: AbortSignal;
	/** What visitors see; null only while there has never been a good exhibit. */
	current(): Exhibit | null;
	/** The same with drafts, and with what is out of its time: for staff only. */
	everything(): Exhibit | null;
	/** Everything that a curator should know about the files as they are now. */
	problems(): Problem[];
	/**
	 * The shape on which the crown of a scan that cannot be measured is to be marked; the last one while its marks
	 * are being tried. null for every other specimen.
	 */
	provisional(id: string): { specimen: SpecimenDraft; shape: ProvisionalShape } | null;
	/** How far the preparing of shapes has come. */
	preparing(): PreparingState;
	/** Calls the listener after each change; returns what ends that. */
	subscribe(listener: (event: { hash: string }) => void): () => void;
	/** Reads the folder now; resolves when what it says is shown, except for shapes still being prepared. */
	reload(): Promise<void>;
	/** Resolves when no shape is being prepared and everything has been written. */
	settled(): Promise<void>;
	close(): Promise<void>;
}

interface ShapeOfSpecimen {
	hash: string;
	job: Omit<ShapeJob, 'preservations'>;
}

/** How often to look whether another day has begun. */
const DAY_LOOK_MS = 5_000;

export function createExhibitStore(options: ExhibitStoreOptions): ExhibitStore {
	const { contentDir, dataDir, logger } = options;
	const now = options.now ?? Date.now;
	const files = fsReader(contentDir);
	let listing = '';
	const reader: ContentReader = {
		read: files.read,
		async list() {
			const found = await files.list();
			listing = listingHash(found);
			return found;
		},
	};
	const cache = createContentCache();
	const listeners = new Set<(event: { hash: string }) => void>();
	const closing = new AbortController();
	const pool = options.prepare ? null : createWorkerPool();
	const keeper = createShapeKeeper({
		dataDir,
		prepare: options.prepare ?? ((job, report) => pool!.run(job, report)),
		logger,
		onDone: () => void queue(show),
	});
	const scanHashes = new Map<string, { stamp: string; bytesHash: string }>();

	let current: Exhibit | null = null;
	let whole: Exhibit | null = null;
	/** the day for which that was worked out */
	let day = '';
	let problems: Problem[] = [];
	let draft: ExhibitDraft | null = null;
	let draftProblems: Problem[] = [];
	let shapes = new Map<string, ShapeOfSpecimen | null>();
	const toMark = new Map<string, ProvisionalShape>();
	let saving: Promise<void> = Promise.resolve();
	let tidied = false;
	let saved = { hash: '', listing: '' };
	let turn: Promise<void> = Promise.resolve();
	let reloadQueued: Promise<void> | null = null;
	let becameReady = (): void => undefined;
	const ready = new Promise<void>((resolve) => {
		becameReady = resolve;
	});

	/** One thing at a time. */
	function queue(step: () => Promise<void>): Promise<void> {
		turn = turn.then(async () => {
			if (closing.signal.aborted) return;
			try {
				await step();
			} catch (cause) {
				logger.warn(`The exhibit could not be brought up to date: ${String(cause)}`);
			}
		});
		return turn;
	}

	function reload(): Promise<void> {
		reloadQueued ??= queue(async () => {
			reloadQueued = null;
			await load();
			await show();
			options.onRead?.();
		});
		return reloadQueued;
	}

	async function load(): Promise<void> {
		const loaded = await loadContent(reader, cache, now());
		draftProblems = loaded.problems;
		if (!loaded.draft) {
			draft = null;
			problems = loaded.problems;
			return;
		}
		const entries = await Promise.all(
			loaded.draft.specimens.map(async (specimen) => [specimen.id, await shapeOf(specimen)] as const),
		);
		draft = loaded.draft;
		shapes = new Map(entries);
	}

	/** null where the scan is missing */
	async function shapeOf(specimen: SpecimenDraft): Promise<ShapeOfSpecimen | null> {
		const { shape } = specimen;
		if (shape.kind === 'model') {
			const hash = formHash(shape.form);
			return { hash, job: { hash, dataDir, source: { kind: 'model', form: shape.form } } };
		}
		try {
			const path = await pathInside(join(contentDir, 'specimens', specimen.id), shape.file);
			const facts = await stat(path);
			const stamp = `${facts.mtimeMs}-${facts.size}-${facts.ino}`;
			let known = scanHashes.get(path);
			if (known?.stamp !== stamp) {
				known = { stamp, bytesHash: await sha256OfFile(path) };
				scanHashes.set(path, known);
			}
			const { units, crown } = shape;
			const plain = shape.colour === 'plain' || undefined;
			const { bytesHash } = known;
			const hash = scanHash(bytesHash, scanFormat(shape.file) ?? '', units, crown, plain);
			const asked = { ...(crown && { crown }), ...(plain && { plain }) };
			const source = { kind: 'scan' as const, path, bytesHash, bytes: facts.size, units, ...asked };
			return { hash, job: { hash, dataDir, source } };
		} catch {
			return null;
		}
	}

	/** Shows what the draft says with the shapes that are there, and has the missing ones prepared. */
	async function show(): Promise<void> {
		if (!draft) {
			becameReady();
			return;
		}
		const found = [...draftProblems];
		const prepared = new Map<string, PreparedShape>();
		const wanted = new Map<string, ShapeJob>();
		for (const specimen of draft.specimens) {
			const shape = shapes.get(specimen.id);
			if (!shape) {
				found.push(await explain(specimen, { of: 'changed' }));
				continue;
			}
			let state = keeper.state(shape.hash, specimen.preservation);
			if (state.is === 'unknown') state = await keeper.find(shape.hash, specimen.preservation);
			if (state.is === 'ready') {
				const told = await tellMeasures(specimen, state.prepared);
				found.push(...told);
				// with a wrong unit its last good version stays
				if (told.every(({ severity }) => severity !== 'error')) prepared.set(specimen.id, state.prepared);
				toMark.delete(specimen.id);
			} else if (state.is === 'failed') {
				found.push(await explain(specimen, state.failure));
				const provisional = provisionalOf(state.failure);
				if (provisional) toMark.set(specimen.id, provisional);
				else toMark.delete(specimen.id);
			} else {
				const job = wanted.get(shape.hash) ?? { ...shape.job, specimen: specimen.id, preservations: [] };
				if (!job.preservations.includes(specimen.preservation)) job.preservations.push(specimen.preservation);
				wanted.set(shape.hash, job);
			}
		}
		problems = found;
		for (const job of wanted.values()) keeper.request(job);
		// A first start shows nothing until all is there; later the rest of the exhibit does not wait.
		if (wanted.size > 0 && !whole) return;
		publish(composeExhibit(draft, found, whole, (specimen) => prepared.get(specimen.id) ?? null));
		if (wanted.size === 0) {
			save();
			tidy();
		}
		becameReady();
	}

	/** Once a start, when all is shown: clears the data folder of shapes that have long been unused. */
	function tidy(): void {
		if (tidied || !whole) return;
		tidied = true;
		const inUse = new Set([
			...whole.specimens.map(({ prepared }) => prepared.hash),
			...[...shapes.values()].flatMap((shape) => (shape ? [shape.hash] : [])),
		]);
		saving = saving
			.then(() => pruneShapes(dataDir, inUse, Date.now()))
			.then((removed) => {
				if (removed > 0) logger.info(`Removed ${removed} prepared shapes that nothing has used for a month.`);
			})
			.catch((cause: unknown) => logger.warn(`The data folder could not be tidied: ${String(cause)}`));
	}

	/** What the measures of a shape tell its curator; the file is read only where there is something to tell. */
	async function tellMeasures(specimen: SpecimenDraft, { measures }: PreparedShape): Promise<Problem[]> {
		if (measureFindings(specimen, measures, () => FILE_START).length === 0) return [];
		const file = `specimens/${specimen.id}/specimen.yaml`;
		const yaml = await reader.read(file).catch(() => null);
		return measureFindings(specimen, measures, placesIn(yaml)).map((found) => withFile(found, file));
	}

	async function explain(specimen: SpecimenDraft, failure: ShapeFailure): Promise<Problem> {
		const yaml = await reader.read(`specimens/${specimen.id}/specimen.yaml`).catch(() => null);
		return shapeProblem(specimen, failure, yaml);
	}

	function publish(exhibit: Exhibit): void {
		if (exhibit.hash !== whole?.hash) whole = exhibit;
		reveal();
	}

	/** Makes current what is to be shown today. */
	function reveal(): void {
		if (!whole) return;
		day = dayIn(whole.timeZone, now());
		const shown = shownExhibit(whole, day);
		if (shown.hash === current?.hash) return;
		current = shown;
		for (const listener of [...listeners]) {
			try {
				listener({ hash: shown.hash });
			} catch (cause) {
				logger.warn(`A listener failed: ${String(cause)}`);
			}
		}
	}

	/** Keeps what is shown as the last good exhibit, unless that is kept already. */
	function save(): void {
		const exhibit = current;
		const wanted = { hash: exhibit?.hash ?? '', listing };
		if (!exhibit || (wanted.hash === saved.hash && wanted.listing === saved.listing)) return;
		saved = wanted;
		saving = saving.then(async () => {
			if (saved !== wanted) return; // a newer one follows
			try {
				await writeSnapshot(dataDir, { exhibit, listing: wanted.listing });
			} catch (cause) {
				logger.warn(`The last good exhibit could not be kept in ${dataDir}: ${String(cause)}`);
			}
		});
	}

	void queue(async () => {
		const snapshot = await readSnapshot(dataDir);
		if (!snapshot) return;
		whole = snapshot.exhibit;
		reveal();
		saved = { hash: whole.hash, listing: snapshot.listing };
		// nothing has changed since: it can be shown while the folder is read for its problems
		if (listingHash(await files.list()) === snapshot.listing) becameReady();
	});
	void reload();
	const stopWatching = options.watch
		? watchContent(contentDir, () => void reload(), {
				polling: needsPolling(contentDir, process.env.CONTENT_POLL),
				logger,
			})
		: null;

	// looked at often rather than waited for: a clock that jumps, or a zone whose summer begins, cannot be missed
	const looking = setInterval(() => {
		if (!whole || dayIn(whole.timeZone, now()) === day) return;
		void queue(async () => {
			reveal();
			save();
		});
		void reload();
	}, DAY_LOOK_MS);
	looking.unref();

	return {
		ready,
		closing: closing.signal,
		current: () => current,
		everything: () => whole,
		problems: () => problems,
		provisional(id) {
			const shape = toMark.get(id);
			const specimen = draft?.specimens.find((one) => one.id === id);
			return shape && specimen ? { specimen, shape } : null;
		},
		preparing: () => keeper.progress(),
		subscribe(listener) {
			listeners.add(listener);
			return () => void listeners.delete(listener);
		},
		reload,
		async settled() {
			let seen: Promise<void> | null = null;
			while (seen !== turn) {
				seen = turn;
				await turn;
				await keeper.settled();
			}
			await saving;
		},
		async close() {
			if (closing.signal.aborted) return;
			closing.abort();
			listeners.clear();
			clearInterval(looking);
			await stopWatching?.();
			await pool?.close();
			await turn;
			await saving;
			becameReady();
		},
	};
}
