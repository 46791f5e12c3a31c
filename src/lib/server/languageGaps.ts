import type { Exhibit } from '../content/exhibit';
import { soundPath, textPath, type TextOf } from '../content/fileKind';

/** A line that the first language has and another lacks. */
export interface Gap {
	/** where it stands in the file, such as `title` or `features.edge`; '' for a recording */
	key: string;
	/** the words of the first language, which are shown instead; plain text */
	words: string;
}

export interface FileGaps {
	/** file of the language that lacks them, below content/ */
	file: string;
	/** lines that the first language has there */
	lines: number;
	missing: Gap[];
}

/** Fields of a text that are not lines of their own: made from the label below the front matter, or a mark. */
const NOT_LINES = new Set(['html', 'sound']);

/**
 * What a language lacks of what the exhibit's first language says, file by file, in the order in which visitors meet
 * it: screens, labels, groups, beds, glossary, rooms. Files with nothing missing are in it too.
 */
export function languageGaps(exhibit: Exhibit, language: string): FileGaps[] {
	const first = exhibit.languages[0].code;
	const found: FileGaps[] = [];
	function compare(file: string, base: unknown, own: unknown, at = ''): void {
		const lines = linesOf(base, at);
		const has = linesOf(own, at);
		const missing = [...lines].flatMap(([key, words]) => (has.has(key) ? [] : [{ key, words }]));
		const known = found.find((one) => one.file === file);
		if (known) {
			known.lines += lines.size;
			known.missing.push(...missing);
		} else found.push({ file, lines: lines.size, missing });
	}
	const items = (of: TextOf, list: readonly { id: string; text: Readonly<Record<string, unknown>> }[]) => {
		for (const { id, text } of list) compare(textPath(of, id, language), text[first], text[language]);
	};
	/** entries of one table, whose words of all tables stand in one file a language */
	const table = (
		file: string,
		name: string,
		list: readonly { id: string; text: Readonly<Record<string, unknown>> }[],
	) => {
		for (const { id, text } of list) compare(file, text[first], text[language], name ? `${name}.${id}` : id);
	};

	compare(`ui/${language}.yaml`, exhibit.ui[first], exhibit.ui[language]);
	items('specimen', exhibit.specimens);
	for (const { id, text } of exhibit.specimens)
		if (text[first]?.sound !== undefined)
			found.push({
				file: soundPath(id, language),
				lines: 1,
				missing: text[language]?.sound === undefined ? [{ key: '', words: text[first].title }] : [],
			});
	items('group', exhibit.groups);
	items('bed', exhibit.beds);
	table(`glossary/${language}.yaml`, '', exhibit.glossary);
	for (const [name, list] of Object.entries(exhibit.replacement ?? {}))
		table(`replacement/${language}.yaml`, name, list);
	if (exhibit.quiz)
		for (const name of ['claims', 'questions', 'rounds'] as const)
			table(`quiz/${language}.yaml`, name, exhibit.quiz[name]);
	const { words } = exhibit.feeding ?? {};
	if (words) compare(`feeding/words/${language}.yaml`, words[first], words[language]);
	return found;
}

/** Every line in some words, by its key. */
function linesOf(words: unknown, at: string, found = new Map<string, string>()): Map<string, string> {
	if (typeof words === 'string') found.set(at, words);
	else if (typeof words === 'object' && words !== null)
		for (const [key, inner] of Object.entries(words))
			if (!NOT_LINES.has(key) && inner !== '') linesOf(inner, at ? `${at}.${key}` : key, found);
	return found;
}
