import type { Reference } from './compileSpecimen';
import type { CompiledText } from './compileText';
import { report, type ContentFiles } from './contentFiles';
import type { Language } from './crossCheckWords';
import type { Bed, Group, GroupText, Source } from './exhibit';
import { placeOf } from './explainIssue';
import { fieldPath } from './fieldPath';
import { drawingPath, factsPath, textPath, type TextOf } from './fileKind';
import { FILE_START } from './finding';
import { suggest } from './suggest';

export interface Items {
	groups: Map<string, Group>;
	beds: Map<string, Bed>;
	sources: Map<string, Source>;
	/** ids that have a file but are left out because of its problems */
	leftOut: { groups: Set<string>; beds: Set<string>; sources: Set<string> };
	/** nothing could be read from sources.yaml, so no reference to it can be judged */
	sourcesUnreadable: boolean;
}

/** Groups, beds and sources, each with its texts; whatever is wrong with one leaves out that one. */
export function crossCheckItems(files: ContentFiles, languages: readonly Language[]): Items {
	const sourceFile = files.byPath.get('sources.yaml');
	if (!sourceFile) {
		const data = { file: 'sources.yaml', holds: 'sources' } as const;
		report(files, 'sources.yaml', 'missing-file', FILE_START, '', data);
	}
	const read = sourceFile?.compiled?.sources;
	const items: Items = {
		groups: new Map(),
		beds: new Map(),
		sources: read?.sources ?? new Map(),
		leftOut: { groups: new Set(), beds: new Set(), sources: read?.leftOut ?? new Set() },
		sourcesUnreadable: !read,
	};
	for (const [path, { kind, compiled }] of files.byPath) {
		if (kind.kind === 'group') {
			const text = textsOf(files, languages, 'group', kind.id, (t) => t.name);
			const sources = keepSources(files, items, path, compiled?.group?.sources ?? []);
			const from = compiled?.group?.lengthSource;
			if (compiled?.group)
				numbersHaveSources(files, languages, 'group', kind.id, [
					...compiled.group.sources,
					...(from ? [from] : []),
				]);
			const lengthSource = keepSources(files, items, path, from ? [from] : []);
			const facts = compiled?.group?.facts;
			if (facts && text && sources && lengthSource) {
				const { length_m, ...rest } = facts;
				const drawing = files.byPath.get(drawingPath(kind.id))?.compiled?.drawing;
				items.groups.set(kind.id, {
					id: kind.id,
					...rest,
					// a length is shown only with who says so
					...(length_m && lengthSource.length > 0 ? { length_m } : {}),
					...(drawing ? { drawing } : {}),
					sources,
					text,
				});
			} else items.leftOut.groups.add(kind.id);
		} else if (kind.kind === 'bed') {
			const text = textsOf(files, languages, 'bed', kind.id, (t) => t.name);
			const facts = compiled?.bed;
			if (facts && text) {
				const names = Object.entries(text).map(([code, { name, short }]) => [code, { name, short }]);
				items.beds.set(kind.id, { id: kind.id, ...facts, text: Object.fromEntries(names) });
			} else items.leftOut.beds.add(kind.id);
		}
	}
	return items;
}

/** Words of an item by language, or null when those of the first language are missing. */
export function textsOf<T = GroupText>(
	files: ContentFiles,
	languages: readonly Language[],
	of: TextOf,
	id: string,
	pick: (text: CompiledText) => T | undefined,
): Record<string, T> | null {
	const [first] = languages;
	const firstPath = textPath(of, id, first.code);
	const texts: Record<string, T> = {};
	for (const language of languages) {
		const path = textPath(of, id, language.code);
		const file = files.byPath.get(path);
		const text = file?.compiled?.text && pick(file.compiled.text);
		if (text) texts[language.code] = text;
		if (file || files.meant.has(path)) continue;
		if (language === first) {
			report(files, path, 'missing-text', FILE_START, '', { file: path, of, id, language: first });
		} else {
			report(files, path, 'missing-translation', FILE_START, '', {
				file: firstPath,
				language,
				first,
				part: 'text',
			});
		}
	}
	return texts[first.code] ? texts : null;
}

/** The sources that can be shown; null when one of them does not exist. */
export function keepSources(
	files: ContentFiles,
	items: Pick<Items, 'sources' | 'leftOut' | 'sourcesUnreadable'>,
	file: string,
	references: readonly Reference[],
): string[] | null {
	const kept: string[] = [];
	let all = true;
	const places = files.byPath.get(file)!.compiled!.places;
	for (const { id, path } of references) {
		if (items.sources.has(id)) {
			kept.push(id);
			continue;
		}
		const place = placeOf(places, path);
		if (items.sourcesUnreadable || items.leftOut.sources.has(id)) {
			report(files, file, 'source-left-out', place, fieldPath(path), { found: id });
			continue;
		}
		const meant = suggest(id, [...items.sources.keys()]);
		report(files, file, 'unknown-source', place, fieldPath(path), { found: id, meant });
		all = false;
	}
	return all ? kept : null;
}

/** Quantities in texts about something that names no source. */
export function numbersHaveSources(
	files: ContentFiles,
	languages: readonly Language[],
	of: TextOf,
	id: string,
	sources: readonly unknown[],
): void {
	if (sources.length > 0) return;
	for (const { code } of languages) {
		const path = textPath(of, id, code);
		const number = files.byPath.get(path)?.compiled?.text?.number;
		if (!number) continue;
		const data = { found: number.found, file: factsPath(of, id) };
		report(files, path, 'number-without-source', number.place, '', data);
	}
}

/** Kinds of files that belong to an item whose facts stand in another file. */
const OWNER: Readonly<Record<string, TextOf>> = {
	asset: 'specimen',
	sound: 'specimen',
	drawing: 'group',
};

/** Files of words whose item has no file of facts. */
export function orphanTexts(files: ContentFiles): void {
	const seen = new Set<string>();
	for (const { kind } of files.byPath.values()) {
		const of = OWNER[kind.kind] ?? (kind.kind === 'text' ? kind.of : null);
		if (of === null || !('id' in kind)) continue;
		const path = factsPath(of, kind.id);
		if (files.byPath.has(path) || files.meant.has(path) || seen.has(path)) continue;
		seen.add(path);
		const holds = { of, id: kind.id };
		report(files, path, 'missing-file', FILE_START, '', { file: path, holds });
	}
}
