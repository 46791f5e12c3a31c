import { report, type ContentFiles } from '../contentFiles';
import { keepSources, type Items } from '../crossCheckItems';
import type { Language } from '../crossCheckWords';
import { placeOf } from '../explainIssue';
import { FILE_START } from '../finding';
import { suggest } from '../suggest';
import type { QuizInFile } from './schemas';
import {
	QUIZ_TABLES,
	type AskText,
	type ClaimEntry,
	type FixedRound,
	type QuestionEntry,
	type QuizContent,
	type QuizTable,
} from './types';

/** Idle time in a round where nobody says: a class talks. */
const WAITS_FOR_S = 300;

export const quizPath = (name: QuizTable | 'settings') => `quiz/${name}.yaml`;
export const quizWordsPath = (language: string) => `quiz/${language}.yaml`;

/** Everything of content/quiz that can be shown. `specimens`: ids of folders that there are. */
export function crossCheckQuiz(
	files: ContentFiles,
	languages: readonly Language[],
	items: Items,
	specimens: readonly string[],
): QuizContent {
	const settings = files.byPath.get(quizPath('settings'))?.compiled?.quizSettings;
	missingLanguages(files, languages);
	unusedWords(files, languages);
	const known = (table: QuizTable, id: string, key: string, found: readonly string[]): boolean => {
		const path = quizPath(table);
		const missing = found.filter((one) => !specimens.includes(one));
		for (const one of missing)
			report(
				files,
				path,
				'quiz-specimen-unknown',
				placeOf(files.byPath.get(path)!.compiled!.places, [id, key], 'key'),
				`${id}.${key}`,
				{ found: one, meant: suggest(one, specimens) },
			);
		return missing.length === 0;
	};
	return {
		off: settings?.off ?? [],
		waitsFor_s: settings?.waitsFor_s ?? WAITS_FOR_S,
		claims: entriesOf<'claims', ClaimEntry>(files, languages, items, 'claims', (value, id) =>
			known('claims', id, 'specimen', value.specimen ? [value.specimen] : []) ? value : null,
		),
		questions: entriesOf<'questions', QuestionEntry>(files, languages, items, 'questions', (value, id) =>
			known('questions', id, 'specimens', value.specimens) ? value : null,
		),
		rounds: entriesOf<'rounds', FixedRound>(files, languages, items, 'rounds', (value) => value),
	};
}

function entriesOf<T extends QuizTable, E extends { id: string }>(
	files: ContentFiles,
	languages: readonly Language[],
	items: Items,
	table: T,
	make: (value: QuizInFile<T>, id: string) => QuizInFile<T> | null,
): E[] {
	const path = quizPath(table);
	const made: E[] = [];
	for (const [id, { value, sources }] of files.byPath.get(path)?.compiled?.quizTable ?? []) {
		const kept = keepSources(files, items, path, sources);
		const text = textOf(files, languages, table, id, value as QuizInFile<'questions'> | undefined);
		if (value === undefined || !kept || !text) continue;
		const facts = make(value as QuizInFile<T>, id);
		if (facts)
			made.push({ id, ...facts, ...(table === 'rounds' ? {} : { sources: kept }), text } as unknown as E);
	}
	return made;
}

/** Words of an entry by language; null when those of the first language are missing. */
function textOf(
	files: ContentFiles,
	languages: readonly Language[],
	table: QuizTable,
	id: string,
	value: QuizInFile<'questions'> | undefined,
): Record<string, AskText | { name: string }> | null {
	const [first, ...others] = languages;
	const words = (code: string) => files.byPath.get(quizWordsPath(code))?.compiled?.quizWords?.[table].get(id);
	const whole = (code: string): AskText | { name: string } | null => {
		const own = words(code);
		if (!own) return null;
		if (table !== 'questions' || !value || !('why' in own)) return own;
		const missing = value.specimens.filter((option) => !own.why[option]);
		const path = quizWordsPath(code);
		const place = placeOf(files.byPath.get(path)!.compiled!.places, [table, id, 'why'], 'key');
		for (const option of missing)
			report(files, path, 'why-missing', place, `${table}.${id}.why`, { option, file: path });
		return missing.length === 0 ? own : null;
	};
	const own = whole(first.code);
	if (!own) {
		const place = placeOf(files.byPath.get(quizPath(table))!.compiled!.places, [id], 'key');
		report(files, quizPath(table), 'quiz-words-missing', place, id, {
			table,
			found: id,
			file: quizWordsPath(first.code),
		});
		return null;
	}
	const text: Record<string, AskText | { name: string }> = { [first.code]: own };
	for (const { code } of others) {
		const translated = whole(code);
		const compiled = files.byPath.get(quizWordsPath(code))?.compiled;
		if (translated) text[code] = translated;
		else if (compiled && !compiled.places.has(`${table}.${id}`))
			report(files, quizWordsPath(code), 'text-not-translated', FILE_START, `${table}.${id}`, {
				key: `${table}.${id}`,
				language: first,
				shown: 'ask' in own ? own.ask : own.name,
			});
	}
	return text;
}

/** A language without a file of words, where there is anything to say. */
function missingLanguages(files: ContentFiles, languages: readonly Language[]): void {
	if (!QUIZ_TABLES.some((table) => files.byPath.has(quizPath(table)))) return;
	const [first, ...others] = languages;
	for (const language of others) {
		const path = quizWordsPath(language.code);
		if (files.byPath.has(path) || files.meant.has(path)) continue;
		report(files, path, 'missing-translation', FILE_START, '', {
			file: quizWordsPath(first.code),
			language,
			first: first,
			part: 'words',
		});
	}
}

/** Words whose entry does not exist. */
function unusedWords(files: ContentFiles, languages: readonly Language[]): void {
	for (const { code } of languages) {
		const path = quizWordsPath(code);
		const compiled = files.byPath.get(path)?.compiled;
		if (!compiled?.quizWords) continue;
		for (const table of QUIZ_TABLES) {
			const facts = files.byPath.get(quizPath(table))?.compiled;
			const names = [...(facts?.quizTable?.keys() ?? [])];
			for (const id of compiled.quizWords[table].keys()) {
				if (facts?.places.has(id)) continue;
				const meant = suggest(
					id,
					names.filter((name) => !compiled.quizWords![table].has(name as never)),
				);
				const place = placeOf(compiled.places, [table, id], 'key');
				report(files, path, 'text-not-used', place, `${table}.${id}`, {
					key: id,
					meant,
					file: quizPath(table),
				});
			}
		}
	}
}
