import type { ContentFiles } from './contentFiles';
import { report } from './contentFiles';
import type { CompiledUi } from './compileTable';
import type { GlossaryEntry } from './exhibit';
import { placeOf } from './explainIssue';
import { FILE_START } from './finding';
import { suggest } from './suggest';

/** Texts of one file that are reported as not used; after that many it is the wrong file. */
const MOST_UNUSED = 50;

export interface Language {
	code: string;
	name: string;
}

/** Screen texts of every language; null when those of the first cannot be used. */
export function crossCheckUi(
	files: ContentFiles,
	languages: readonly Language[],
): Record<string, Record<string, string>> | null {
	const [first, ...others] = languages;
	const firstFile = `ui/${first.code}.yaml`;
	const known = files.byPath.get(firstFile);
	if (!known && !files.meant.has(firstFile)) {
		report(files, firstFile, 'missing-file', FILE_START, '', {
			file: firstFile,
			holds: 'screen-words',
		});
	}
	const base = known?.compiled?.ui;
	if (!base) return null;

	const ui: Record<string, Record<string, string>> = {
		[first.code]: {
			...Object.fromEntries(base.broken),
			...Object.fromEntries([...base.messages].map(([key, { text }]) => [key, text])),
		},
	};
	for (const language of others) {
		const path = `ui/${language.code}.yaml`;
		const file = files.byPath.get(path);
		ui[language.code] = {};
		if (!file && files.meant.has(path)) continue;
		if (!file) missingTable(files, path, firstFile, first, language);
		else if (file.compiled?.ui) ui[language.code] = translated(files, path, file.compiled.ui, base, first);
	}
	return ui;
}

function translated(
	files: ContentFiles,
	path: string,
	ui: CompiledUi,
	base: CompiledUi,
	first: Language,
): Record<string, string> {
	const kept: Record<string, string> = {};
	const unused: string[] = [];
	for (const [key, { text, names, place }] of ui.messages) {
		const original = base.messages.get(key);
		if (!original) {
			if (base.broken.has(key)) kept[key] = text;
			else unused.push(key);
			continue;
		}
		const missing = original.names.filter((name) => !names.includes(name));
		const extra = names.filter((name) => !original.names.includes(name));
		if (missing.length + extra.length === 0) {
			kept[key] = text;
			continue;
		}
		const braces = (name: string) => `{${name}}`;
		report(files, path, 'placeholder-mismatch', place, key, {
			missing: missing.map(braces),
			extra: extra.map(braces),
			language: first,
		});
	}
	const untranslated = [...base.messages.keys()].filter((other) => !ui.messages.has(other));
	for (const key of unused.slice(0, MOST_UNUSED)) {
		const place = placeOf(files.byPath.get(path)!.compiled!.places, [key], 'key');
		const words = { key, meant: suggest(key, untranslated), file: `ui/${first.code}.yaml` };
		report(files, path, 'text-not-used', place, key, words);
	}
	for (const [key, { text }] of base.messages) {
		if (ui.messages.has(key) || ui.broken.has(key)) continue;
		report(files, path, 'text-not-translated', FILE_START, key, { key, language: first, shown: text });
	}
	return kept;
}

/** Glossary entries of the first language with their translations. */
export function crossCheckGlossary(files: ContentFiles, languages: readonly Language[]): GlossaryEntry[] {
	const [first, ...others] = languages;
	const firstFile = `glossary/${first.code}.yaml`;
	const base = files.byPath.get(firstFile)?.compiled?.glossary;
	const entries = new Map<string, Record<string, { term: string; meaning: string }>>();
	for (const [id, { term, meaning }] of base ?? []) entries.set(id, { [first.code]: { term, meaning } });
	for (const language of others) {
		const path = `glossary/${language.code}.yaml`;
		const file = files.byPath.get(path);
		if (!file && base && base.size > 0 && !files.meant.has(path))
			missingTable(files, path, firstFile, first, language);
		const own = file?.compiled?.glossary;
		if (!own) continue;
		for (const [id, { term, meaning, place }] of own) {
			const entry = entries.get(id);
			if (entry) entry[language.code] = { term, meaning };
			else if (base && !files.byPath.get(firstFile)!.compiled!.places.has(id)) {
				const meant = suggest(
					id,
					[...entries.keys()].filter((other) => !own.has(other)),
				);
				report(files, path, 'text-not-used', place, id, { key: id, meant, file: firstFile });
			}
		}
		for (const [id, { term }] of base ?? []) {
			if (own.has(id) || file!.compiled!.places.has(id)) continue;
			report(files, path, 'text-not-translated', FILE_START, id, {
				key: id,
				language: first,
				shown: term,
			});
		}
	}
	return [...entries].map(([id, text]) => ({ id, text }));
}

function missingTable(
	files: ContentFiles,
	path: string,
	firstFile: string,
	first: Language,
	language: Language,
) {
	report(files, path, 'missing-translation', FILE_START, '', {
		file: firstFile,
		language,
		first,
		part: 'words',
	});
}
