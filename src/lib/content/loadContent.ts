import { checkNames } from './checkNames';
import { compileFile, failed, type CompiledFile } from './compileFile';
import { report, withFile, type ContentFiles, type KnownFile } from './contentFiles';
import { crossCheckFeeding } from './crossCheckFeeding';
import { crossCheckItems, orphanTexts } from './crossCheckItems';
import { crossCheckShown } from './shown/crossCheckShown';
import { crossCheckSpecimens } from './crossCheckSpecimens';
import { crossCheckGlossary, crossCheckUi } from './crossCheckWords';
import type { ContentFile, ContentReader, ExhibitDraft, LoadedContent } from './draft';
import { fileKind } from './fileKind';
import { FILE_START, finding } from './finding';
import type { Problem } from './problem';
import { crossCheckQuiz } from './quiz/crossCheckQuiz';
import { crossCheckReplacement } from './replacement/crossCheckReplacement';
import { crossCheckScreens } from './screens/crossCheckScreens';

/** Largest text file, bytes. */
export const MOST_BYTES = 1_000_000;
/** Files that are read at the same time. */
const READ_AT_ONCE = 32;

/** What each file held when it was last read, by path and stamp; keep one for as long as a folder is watched. */
export interface ContentCache {
	files: Map<string, { stamp: string; compiled: CompiledFile }>;
}

export const createContentCache = (): ContentCache => ({ files: new Map() });

/**
 * Reads the content folder in five steps: list and read, take apart, check each file by itself, check files against
 * each other, put together. `now`, milliseconds since 1970, tells which days are over. A file that cannot be used leaves out what it describes and says why; nothing throws.
 */
export async function loadContent(
	reader: ContentReader,
	cache: ContentCache = createContentCache(),
	now: number = Date.now(),
): Promise<LoadedContent> {
	const files: ContentFiles = { byPath: new Map(), problems: [], meant: new Set() };
	let listed: ContentFile[];
	try {
		listed = await reader.list();
	} catch (cause) {
		report(files, '', 'folder-unreadable', FILE_START, '', { reason: reasonOf(cause) });
		return { draft: null, problems: files.problems };
	}
	// a disk that was pulled out leaves an empty folder, or none
	if (listed.length === 0) {
		report(files, '', 'folder-unreadable', FILE_START, '', { reason: 'there is nothing in it' });
		return { draft: null, problems: files.problems };
	}
	files.byPath = await readAll(reader, listed, cache);
	for (const [path, { compiled }] of files.byPath) {
		for (const found of compiled?.findings ?? []) files.problems.push(withFile(found, path));
	}
	const draft = putTogether(files, now);
	return { draft, problems: files.problems.sort(byPlace) };
}

async function readAll(
	reader: ContentReader,
	listed: readonly ContentFile[],
	cache: ContentCache,
): Promise<Map<string, KnownFile>> {
	const sorted = [...listed].sort((a, b) => compare(a.path, b.path));
	const known = new Map<string, KnownFile>();
	const toRead: KnownFile[] = [];
	for (const file of sorted) {
		const kind = fileKind(file.path);
		const entry: KnownFile = { file, kind };
		known.set(file.path, entry);
		if (kind.kind === 'asset' || kind.kind === 'sound' || kind.kind === 'stray' || kind.kind === 'ignored')
			continue;
		const kept = cache.files.get(file.path);
		if (kept?.stamp === file.stamp) entry.compiled = kept.compiled;
		else toRead.push(entry);
	}
	for (let i = 0; i < toRead.length; i += READ_AT_ONCE) {
		await Promise.all(toRead.slice(i, i + READ_AT_ONCE).map((entry) => readOne(reader, entry, cache)));
	}
	for (const path of cache.files.keys()) if (!known.has(path)) cache.files.delete(path);
	return known;
}

async function readOne(reader: ContentReader, entry: KnownFile, cache: ContentCache): Promise<void> {
	const { file, kind } = entry;
	if (file.size > MOST_BYTES) {
		const size_kB = Math.ceil(file.size / 1000);
		entry.compiled = failed(
			finding('file-too-large', FILE_START, '', { size_kB, most_kB: MOST_BYTES / 1000 }),
		);
		return;
	}
	let text: string;
	try {
		text = await reader.read(file.path);
	} catch (cause) {
		// not kept: the next load tries again
		cache.files.delete(file.path);
		entry.compiled = failed(finding('unreadable-file', FILE_START, '', { reason: reasonOf(cause) }));
		return;
	}
	if (text.length > MOST_BYTES) {
		const size_kB = Math.ceil(text.length / 1000);
		entry.compiled = failed(
			finding('file-too-large', FILE_START, '', { size_kB, most_kB: MOST_BYTES / 1000 }),
		);
	} else entry.compiled = compileFile(kind, text);
	cache.files.set(file.path, { stamp: file.stamp, compiled: entry.compiled });
}

/** The last two steps: files against each other, then one exhibit. */
function putTogether(files: ContentFiles, now: number): ExhibitDraft | null {
	const exhibitFile = files.byPath.get('exhibit.yaml');
	if (!exhibitFile) {
		const data = { file: 'exhibit.yaml', holds: 'exhibit' } as const;
		report(files, 'exhibit.yaml', 'missing-file', FILE_START, '', data);
	}
	const exhibit = exhibitFile?.compiled?.exhibit ?? null;
	checkNames(files, exhibit?.languages ?? null);
	orphanTexts(files);
	if (!exhibit) return null;

	const { languages } = exhibit;
	const ui = crossCheckUi(files, languages);
	const glossary = crossCheckGlossary(files, languages);
	const items = crossCheckItems(files, languages);
	const specimens = crossCheckShown(files, exhibit, crossCheckSpecimens(files, languages, items), now);
	const replacement = crossCheckReplacement(files, languages, items);
	const feeding = crossCheckFeeding(files, languages, items, exhibit.rooms.includes('feeding'));
	const quiz = crossCheckQuiz(
		files,
		languages,
		items,
		specimens.map(({ id }) => id),
	);
	const codes = languages.map(({ code }) => code);
	const screens = crossCheckScreens(files, exhibit.rooms, codes);
	if (!ui) return null;
	const { contact, specimensFirst: _order, roomIndex: _index, ...settings } = exhibit;
	return {
		...settings,
		...(contact === undefined ? {} : { contact }),
		specimens,
		groups: [...items.groups.values()],
		beds: [...items.beds.values()],
		sources: [...items.sources.values()],
		glossary,
		...(replacement ? { replacement } : {}),
		...(feeding ? { feeding } : {}),
		quiz,
		screens,
		ui,
	};
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
const byPlace = (a: Problem, b: Problem) =>
	compare(a.file, b.file) ||
	a.line - b.line ||
	a.column - b.column ||
	compare(a.path, b.path) ||
	compare(a.id, b.id);
const reasonOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));
