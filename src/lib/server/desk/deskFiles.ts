import { join } from 'node:path';
import type {
	ChangedBy,
	Clash,
	FileChange,
	FileRefusal,
	KeptFile,
	KeptVersion,
	OpenFile,
	Refusal,
	Saved,
	SaveFailure,
	WhatWasDone,
} from '../../content/deskFiles';
import { createContentCache, loadContent, MOST_BYTES } from '../../content/loadContent';
import { fail, ok, type Result } from '../../domain/result';
import type { PlannedFile } from '../contentWith';
import { fsReader } from '../fsReader';
import type { Logger } from '../logger';
import { LIMITS } from '../scan/limits';
import { checkChanges, type CheckOfChanges } from './checkChanges';
import { checkContentPath } from './checkContentPath';
import { codeOf, realFs, type DeskFs } from './deskFs';
import { hashOf, keptVersions, KEPT_LIMITS, type KeptLimits } from './keptVersions';
import { mergeTexts } from './mergeTexts';
import { noticeChanges } from './noticeChanges';
import { isWithin, placeInside, type Place } from './placeInside';
import { sweepTemporary } from './sweepTemporary';
import { hasMark, inStyleOf, lineEndsOf, plainText } from './textStyle';
import { versionId } from './versionId';
import { wantedState, type RestoreRequest } from './wantedState';
import { finishWriting, hashOfFile, writeFiles, type PlacedChange, type SavePoint } from './writeFiles';

export interface DeskFilesOptions {
	contentDir: string;
	dataDir: string;
	/** milliseconds since 1970 */
	now: () => number;
	logger: Logger;
	fs?: DeskFs;
	limits?: KeptLimits;
	/** called at each point of a save */
	at?: (point: SavePoint) => Promise<void> | void;
}

export interface SaveRequest {
	changes: readonly FileChange[];
	by: ChangedBy;
	what: WhatWasDone;
	/** saves what the content check calls an error; only where somebody has seen the errors and asked again */
	evenIfBroken?: boolean;
	/** errors that do not matter here, by id and path of the file */
	forgive?: (problem: { id: string; file: string }) => boolean;
}

/** How the desk reads and changes the files of the content folder. One save at a time. */
export interface DeskFiles {
	/** A save that was cut off has been completed. */
	readonly ready: Promise<void>;
	/** Every text file that may be opened, by path. */
	list(): Promise<{ path: string; bytes: number }[]>;
	open(path: string): Promise<Result<OpenFile, Refusal>>;
	/** What the content check would say, with nothing written. */
	check(changes: readonly FileChange[]): Promise<Result<CheckOfChanges, SaveFailure>>;
	/** Writes all of the changes or none. */
	save(request: SaveRequest): Promise<Result<Saved, SaveFailure>>;
	/** Kept versions, newest first; of one file, or of a folder where the path ends in a slash. */
	versions(path?: string): Promise<KeptVersion[]>;
	/** What a file held after a version, or before it; null where there was none. */
	readVersion(id: string, path: string, side?: 'before' | 'after'): Promise<Result<string | null, Refusal>>;
	/** Brings an earlier state back, as a save like any other. */
	restore(request: RestoreRequest & { evenIfBroken?: boolean }): Promise<Result<Saved, SaveFailure>>;
	/** Keeps what was changed from outside since the last version; call it when the folder has changed. */
	notice(): Promise<void>;
}

/** With more files in a save their versions are left to the system to flush. */
const MANY_FILES = 20;
/** Opened texts that are remembered, so that a clash can be shown in full. */
const MOST_OPENED = 200;

export function deskFiles(options: DeskFilesOptions): DeskFiles {
	const { contentDir, dataDir, now, logger } = options;
	const fs = options.fs ?? realFs;
	const limits = options.limits ?? KEPT_LIMITS;
	const folder = join(dataDir, 'versions');
	const reader = fsReader(contentDir);
	const kept = keptVersions(folder, fs, limits);
	const writing = { fs, kept, folder, at: options.at };
	const cache = createContentCache();
	const opened = new Map<string, string>();
	let turn: Promise<unknown> = Promise.resolve();

	/** One thing at a time. */
	function queue<T>(step: () => Promise<T>): Promise<T> {
		const done = turn.then(step);
		turn = done.catch(() => undefined);
		return done;
	}

	const ready = queue(async () => {
		await complete();
		await sweepTemporary(fs, contentDir);
	}).catch((cause: unknown) => logger.warn(`The desk could not look after its last save: ${String(cause)}`));

	async function complete(): Promise<void> {
		const finished = await finishWriting(writing);
		if (!finished) return;
		logger.info('A save at the desk that was cut off has been completed.');
		for (const path of finished.left) logger.warn(`${path} had been changed since and was left as it is.`);
	}

	async function readText(path: string): Promise<Result<{ exact: string; base: string }, FileRefusal>> {
		const place = await placeInside(fs, contentDir, path);
		if (!place.ok) return place;
		if (place.value.kind !== 'text') return fail('not-allowed');
		if (!place.value.isThere) return fail('no-such-file');
		try {
			if ((await fs.stat(place.value.real)).size > MOST_BYTES) return fail('too-large');
			const bytes = await fs.readFile(place.value.real);
			const exact = textOf(bytes);
			if (exact === null) return fail('not-text');
			const base = hashOf(bytes);
			opened.delete(base);
			opened.set(base, exact);
			for (const first of opened.keys()) if (opened.size > MOST_OPENED) opened.delete(first);
			return ok({ exact, base });
		} catch (cause) {
			return fail(codeOf(cause) === 'ENOENT' ? 'no-such-file' : 'unreadable');
		}
	}

	async function keptText(hash: string | null): Promise<string | null> {
		if (hash === null) return null;
		const bytes = await kept.read(hash);
		return opened.get(hash) ?? (bytes ? textOf(bytes) : null);
	}

	interface Planned {
		change: FileChange;
		place: Place;
		/** what it holds now */
		hash: string | null;
		text: string | null;
		after: string | null;
		content: PlacedChange['content'];
		size: number;
	}

	/** Where each change goes and what it means, or why it cannot be made. */
	async function plan(changes: readonly FileChange[]): Promise<Result<Planned[], SaveFailure>> {
		const refuse = (path: string, why: FileRefusal) => fail({ code: 'refused', path, why } as const);
		const planned: Planned[] = [];
		const seen = new Set<string>();
		for (const change of changes) {
			const { path } = change;
			const placed = await placeInside(fs, contentDir, path);
			if (!placed.ok) return refuse(path, placed.problem);
			const place = placed.value;
			if (seen.has(place.real.toLowerCase())) return refuse(path, 'twice');
			seen.add(place.real.toLowerCase());
			try {
				const hash = place.isThere ? await hashOfFile(fs, place.real) : null;
				const bytes = hash !== null && place.kind === 'text' ? await fs.readFile(place.real) : null;
				const text = bytes && textOf(bytes);
				if ('from' in change) {
					if (place.kind !== 'data') return refuse(path, 'not-allowed');
					const { size } = await fs.stat(change.from);
					if (size > LIMITS.fileBytes) return refuse(path, 'too-large');
					const after = await hashOfFile(fs, change.from);
					planned.push({ change, place, hash, text, after, content: { from: change.from }, size });
					continue;
				}
				if (change.text === null) {
					planned.push({ change, place, hash, text, after: null, content: null, size: 0 });
					continue;
				}
				if (place.kind !== 'text') return refuse(path, 'not-allowed');
				const written = change.typed ? inStyleOf(change.text, text) : change.text;
				const content = Buffer.from(written);
				if (content.length > MOST_BYTES) return refuse(path, 'too-large');
				// a lone half of a pair, or a sign that no text holds
				if (textOf(content) !== written || !written.isWellFormed()) return refuse(path, 'not-text');
				planned.push({ change, place, hash, text, after: hashOf(content), content, size: content.length });
			} catch (cause) {
				return fail({ code: 'not-written', path, reason: codeOf(cause) });
			}
		}
		return ok(planned);
	}

	async function clashes(planned: readonly Planned[]): Promise<Clash[]> {
		// what is wanted is there already: nobody need be asked
		const stale = planned.filter(({ change, hash, after }) => hash !== change.base && hash !== after);
		return Promise.all(
			stale.map(async ({ change, hash, text, content }) => {
				const ours = content instanceof Uint8Array ? content.toString() : null;
				const started = await keptText(change.base);
				const both = ours !== null && text !== null && started !== null;
				return {
					path: change.path,
					started: started === null ? null : plainText(started),
					ours: ours === null ? null : plainText(ours),
					theirs: text === null ? null : plainText(text),
					theirBase: hash,
					merged: both ? mergeTexts(plainText(ours), plainText(started), plainText(text)) : null,
				};
			}),
		);
	}

	const checkOf = (planned: readonly Planned[]): Promise<CheckOfChanges> =>
		checkChanges(
			reader,
			new Map(
				planned.map(({ change, content, size }): [string, PlannedFile] => [
					change.path,
					content instanceof Uint8Array ? content.toString() : content && { bytes: size },
				]),
			),
			cache,
		);

	async function save(request: SaveRequest): Promise<Result<Saved, SaveFailure>> {
		await complete();
		const made = await plan(request.changes);
		if (!made.ok) return made;
		const clashing = await clashes(made.value);
		if (clashing.length > 0) return fail({ code: 'changed-underneath', clashes: clashing });
		const planned = made.value.filter(({ hash, after }) => hash !== after);
		const { problems, fresh } = await checkOf(planned);
		const files = made.value.map(({ change, after }) => ({ path: change.path, base: after }));
		if (planned.length === 0) return ok({ version: null, files, problems, fresh });
		const wrong = fresh.filter(
			({ severity, id, file }) => severity === 'error' && !request.forgive?.({ id, file }),
		);
		if (wrong.length > 0 && !request.evenIfBroken) return fail({ code: 'has-errors', problems, fresh });

		const keptFiles: KeptFile[] = [];
		// the files themselves are flushed one by one all the same
		const many = planned.length > MANY_FILES;
		try {
			for (const { change, place, hash, after, content, size } of planned) {
				const oldSize = hash === null ? 0 : (await fs.stat(place.real)).size;
				const small = place.kind === 'text' || Math.max(size, oldSize) <= limits.dataBytes;
				if (small) {
					if (hash !== null) await kept.keep(await fs.readFile(place.real), many);
					if (content)
						await kept.keep(content instanceof Uint8Array ? content : await fs.readFile(content.from), many);
				}
				keptFiles.push({ path: change.path, before: hash, after, kept: small });
			}
		} catch (cause) {
			return fail({ code: 'not-written', path: planned[0].change.path, reason: codeOf(cause) });
		}
		const version: KeptVersion = {
			...versionId(now()),
			by: request.by,
			what: request.what,
			files: keptFiles,
			problems: {
				errors: problems.filter(({ severity }) => severity === 'error').length,
				warnings: problems.filter(({ severity }) => severity === 'warning').length,
			},
		};
		const written = await writeFiles(
			writing,
			planned.map(({ change, place, hash, after, content }) => ({
				path: change.path,
				real: place.real,
				before: hash,
				after,
				content,
			})),
			version,
		);
		if (written.ok) return ok({ version: version.id, files, problems, fresh });
		if (written.problem.code === 'not-written') return fail(written.problem);
		// somebody else was quicker, between the first look and the last
		const again = await plan(request.changes);
		if (!again.ok) return again;
		return fail({ code: 'changed-underneath', clashes: await clashes(again.value) });
	}

	return {
		ready,
		async list() {
			const root = await fs.realpath(contentDir).catch(() => null);
			if (root === null) return [];
			const found = (await reader.list()).filter(({ path }) => checkContentPath(path) === 'text');
			const real = await Promise.all(
				found.map(({ path }) => fs.realpath(join(root, path)).catch(() => null)),
			);
			return found
				.filter((_, i) => real[i] !== null && isWithin(real[i], root))
				.map(({ path, size }) => ({ path, bytes: size }));
		},
		async open(path) {
			await ready;
			const read = await readText(path);
			if (!read.ok) return fail({ code: read.problem, path });
			const { exact, base } = read.value;
			return ok({ path, text: plainText(exact), exact, base, eol: lineEndsOf(exact), bom: hasMark(exact) });
		},
		check: (changes) =>
			queue(async () => {
				const made = await plan(changes);
				return made.ok ? ok(await checkOf(made.value)) : made;
			}),
		save: (request) => queue(() => save(request)),
		versions: (path) =>
			queue(async () => {
				const all = [...(await kept.all())].reverse();
				if (path === undefined) return all;
				const meant = (one: string) => (path.endsWith('/') ? one.startsWith(path) : one === path);
				return all.filter(({ files }) => files.some((file) => meant(file.path)));
			}),
		readVersion: (id, path, side = 'after') =>
			queue(async () => {
				const version = (await kept.all()).find((one) => one.id === id);
				const file = version?.files.find((one) => one.path === path);
				if (!file) return fail({ code: version ? 'no-such-file' : 'no-such-version', path } as const);
				const hash = file[side];
				if (hash === null) return ok(null);
				const bytes = await kept.read(hash);
				const text = bytes && textOf(bytes);
				return text === null ? fail({ code: 'not-kept', path } as const) : ok(plainText(text));
			}),
		restore: (request) =>
			queue(async () => {
				const wanted = wantedState(await kept.all(), request);
				if (!wanted)
					return fail({ code: 'refused', path: request.path ?? '', why: 'no-such-version' } as const);
				const changes: FileChange[] = [];
				for (const [path, hash] of wanted) {
					const placed = await placeInside(fs, contentDir, path);
					if (!placed.ok) return fail({ code: 'refused', path, why: placed.problem } as const);
					const { real, kind, isThere } = placed.value;
					const found = isThere ? await hashOfFile(fs, real) : null;
					if (found === hash) continue;
					const base = path === request.path && request.base !== undefined ? request.base : found;
					if (hash === null) {
						changes.push({ path, base, text: null });
						continue;
					}
					const bytes = await kept.read(hash);
					if (!bytes) return fail({ code: 'refused', path, why: 'not-kept' } as const);
					if (kind === 'data') changes.push({ path, base, from: kept.placeOf(hash) });
					else changes.push({ path, base, text: textOf(bytes)! });
				}
				const { by, what, evenIfBroken } = request;
				return save({ changes, by: by ?? 'desk', what, evenIfBroken });
			}),
		notice: () =>
			queue(async () => {
				await complete();
				const problems = async () => (await loadContent(reader, cache)).problems;
				await noticeChanges({ fs, contentDir, folder, reader, kept, now, problems });
			}),
	};
}

/** Bytes as text with every sign; null where they are none. */
function textOf(bytes: Uint8Array): string | null {
	try {
		const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
		return text.includes('\0') ? null : text;
	} catch {
		return null;
	}
}
