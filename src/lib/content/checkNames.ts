import { report, type ContentFiles } from './contentFiles';
import type { Language } from './crossCheckWords';
import { canonicalLanguage, idFrom } from './explainIssue';
import { soundPath, textPath } from './fileKind';
import { FILE_START } from './finding';

/** Folders of words that are not called like their kind. */
const WORDS_FOLDER: Readonly<Record<string, string>> = {
	'replacement-words': 'replacement',
	'quiz-words': 'quiz',
	'feeding-words': 'feeding/words',
};

/** File names that the exhibit cannot use, and languages that it does not show. */
export function checkNames(files: ContentFiles, languages: readonly Language[] | null): void {
	const codesAreWrong = files.byPath
		.get('exhibit.yaml')
		?.compiled?.findings.some(({ id }) => id === 'bad-code');
	for (const [path, { kind }] of files.byPath) {
		if (kind.kind === 'stray') {
			const folder = path.slice(0, path.lastIndexOf('/') + 1);
			if ('name' in kind) files.meant.add(folder + kind.name);
			const here = [path, FILE_START, ''] as const;
			if (kind.reason === 'unknown')
				report(files, here[0], 'unknown-file', here[1], '', { meant: kind.meant });
			else if (kind.reason === 'ending') {
				report(files, here[0], 'wrong-ending', here[1], '', { found: kind.found, name: kind.name });
			} else if (kind.reason === 'no-language') {
				report(files, here[0], 'no-language-code', here[1], '', { name: kind.name });
			} else
				report(files, here[0], 'bad-name', here[1], '', { found: kind.found, meant: idFrom(kind.found) });
			continue;
		}
		if (!languages || !('language' in kind)) continue;
		const codes = languages.map(({ code }) => code);
		const found = kind.language;
		if (codes.includes(found)) continue;
		const canonical = canonicalLanguage(found);
		const meant = canonical && codes.includes(canonical) ? canonical : undefined;
		if (!meant && canonical === found) {
			if (!codesAreWrong) report(files, path, 'language-not-shown', FILE_START, '', { found, codes });
			continue;
		}
		const whole =
			kind.kind === 'text'
				? textPath(kind.of, kind.id, meant ?? codes[0])
				: kind.kind === 'sound'
					? soundPath(kind.id, meant ?? codes[0])
					: `${WORDS_FOLDER[kind.kind] ?? kind.kind}/${meant ?? codes[0]}.yaml`;
		if (meant) files.meant.add(whole);
		const name = whole.slice(whole.lastIndexOf('/') + 1);
		report(files, path, 'wrong-language-code', FILE_START, '', { found, meant, codes, name });
	}
}
