import { mkdtempSync, rmSync, writeFileSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Exhibit } from '../../../src/lib/content/exhibit';
import { loadContent } from '../../../src/lib/content/loadContent';
import type { Problem } from '../../../src/lib/content/problem';
import { attractAsks } from '../../../src/lib/server/attractAsks';
import { composeExhibit } from '../../../src/lib/server/composeExhibit';
import { fsReader } from '../../../src/lib/server/fsReader';
import { viewFor } from '../../../src/lib/server/viewFor';
import { viewQuiz } from '../../../src/lib/server/viewQuiz';
import { viewReplacement } from '../../../src/lib/server/viewReplacement';
import { arabic, copyWithLanguages, pseudo } from '../../fixtures/madeLanguage';
import { prepared } from './samples';

const CONTENT = path.resolve(__dirname, '../../../content');
let folder: string;
let exhibit: Exhibit;
let problems: Problem[];
let before: Problem[];

async function load(dir: string): Promise<{ exhibit: Exhibit; problems: Problem[] }> {
	const loaded = await loadContent(fsReader(dir));
	return {
		exhibit: composeExhibit(loaded.draft!, loaded.problems, null, ({ id }) => prepared(id)),
		problems: loaded.problems,
	};
}

beforeAll(async () => {
	folder = mkdtempSync(path.join(tmpdir(), 'tooth-table-languages-'));
	copyWithLanguages(CONTENT, folder, [pseudo, arabic]);
	({ exhibit, problems } = await load(folder));
	({ problems: before } = await load(CONTENT));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What each room's pages are given. */
const views = (of: Exhibit, lang: string): unknown => ({
	view: viewFor(of, lang),
	replacement: viewReplacement(of, lang),
	quiz: viewQuiz(of, lang),
	attract: attractAsks(of).find((asks) => asks.lang === lang),
});

/** Every text in some data, by where it stands. */
function texts(value: unknown, at = '', found = new Map<string, string>()): Map<string, string> {
	if (typeof value === 'string') found.set(at, value);
	else if (typeof value === 'object' && value !== null)
		for (const [key, inner] of Object.entries(value)) texts(inner, `${at}/${key}`, found);
	return found;
}

/** Where English and French words differ, something is said in words. */
function spoken(): [string, string][] {
	const french = texts(views(exhibit, 'fr'));
	return [...texts(views(exhibit, 'en'))].filter(
		([at, words]) => french.get(at) !== words && /\p{L}/u.test(words.replace(/\{[^{}]*\}/g, '')),
	);
}

describe('a language added with files alone', () => {
	it('has nothing that the content check would say of it, but what it says of how the text reads', () => {
		const files = /(^|[./])(qaa|ar)\.(yaml|md)$/;
		const advice = new Set(['long-label', 'long-sentence', 'long-line', 'alt-repeats-title']);
		expect(
			problems
				.filter(({ file, id }) => files.test(file) && !advice.has(id))
				.map(({ file, message }) => `${file}: ${message}`),
		).toEqual([]);
		expect(problems.filter(({ file }) => !files.test(file))).toEqual(before);
	});

	it('gets no reading-ease warning, since no formula is known for it', () => {
		expect(problems.filter(({ id }) => id === 'hard-to-read').map(({ file }) => file)).toEqual(
			before.filter(({ id }) => id === 'hard-to-read').map(({ file }) => file),
		);
	});

	it.each([pseudo, arabic])('serves every room in $name: no word is in another language', ({ code }) => {
		const own = texts(views(exhibit, code));
		const said = spoken();
		expect(said.length).toBeGreaterThan(900);
		const left = said.filter(([at, words]) => own.get(at) === words).map(([at, words]) => `${at}: ${words}`);
		expect(left).toEqual([]);
		expect([...own].filter(([at, words]) => at.endsWith('/textLang') && words !== code)).toEqual([]);
	});

	it('knows which way each runs', () => {
		expect(viewFor(exhibit, 'qaa').languages.map(({ code, dir }) => `${code} ${dir}`)).toEqual([
			'en ltr',
			'fr ltr',
			'es ltr',
			'qaa ltr',
			'ar rtl',
		]);
	});

	it('is longer by 40 %', () => {
		const length = (lang: string) =>
			Object.values(viewFor(exhibit, lang).ui).reduce((sum, { length }) => sum + length, 0);
		expect(length('qaa') / length('en')).toBeGreaterThan(1.3);
	});

	it('can be begun with one line: all else is shown in the first language', async () => {
		const begun = mkdtempSync(path.join(tmpdir(), 'tooth-table-begun-'));
		copyWithLanguages(CONTENT, begun, []);
		const yaml = path.join(begun, 'exhibit.yaml');
		writeFileSync(
			yaml,
			readFileSync(yaml, 'utf8').replace(
				'name: Español\n',
				'name: Español\n  - { code: de, name: Deutsch }\n',
			),
		);
		writeFileSync(path.join(begun, 'ui/de.yaml'), 'to_start: Zurück zum Anfang\n');
		const { exhibit: now, problems: told } = await load(begun);
		rmSync(begun, { recursive: true, force: true });
		expect(told.filter(({ severity }) => severity === 'error')).toEqual([]);
		const { ui, ...rest } = viewFor(now, 'de');
		const { ui: first, ...firstRest } = viewFor(now, 'en');
		expect(ui).toEqual({ ...first, to_start: 'Zurück zum Anfang' });
		const borrowed = texts(rest);
		for (const [at, words] of texts(firstRest))
			if (!['/lang'].includes(at)) expect([at, borrowed.get(at)]).toEqual([at, words]);
	});
});
