import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import type { MessageId } from '../../../src/lib/content/messages';
import { EN } from '../../../src/lib/content/messages/en';
import { ES } from '../../../src/lib/content/messages/es';
import { EXAMPLES } from '../../../src/lib/content/messages/examples';
import { FR } from '../../../src/lib/content/messages/fr';
import type { Wording } from '../../../src/lib/content/messages/parts';
import { wordedIn, wordProblem, type Wordable } from '../../../src/lib/content/wordProblem';
import { deskProblem, wordDesk, type DeskCode } from '../../../src/lib/server/deskProblem';
import { BROKEN } from './broken';
import { memoryReader } from './memoryReader';
import { contentWith } from './validContent';

/** Reviewed word for word; a changed message is changed here too, by hand. */
interface Translated {
	case: string;
	id: string;
	fr: [message: string, remedy: string];
	es: [message: string, remedy: string];
}
const TABLES = join(__dirname, 'translated');
const TRANSLATED = readdirSync(TABLES).flatMap(
	(file) => JSON.parse(readFileSync(join(TABLES, file), 'utf8')) as Translated[],
);

const problems = new Map<string, Wordable[]>();
for (const { name, overlay } of BROKEN) {
	problems.set(name, (await loadContent(memoryReader(contentWith(overlay)))).problems);
}

/** What no broken text shows: only measuring, reading a scan or a read-only disk can. */
const ELSEWHERE: [MessageId | `${'scan' | 'shape'}-${string}`, unknown][] = [
	['folder-unreadable', { reason: 'EACCES' }],
	['unreadable-file', { reason: 'EBUSY' }],
	['file-too-large', { size_kB: 1200.5, most_kB: 1000 }],
	['too-many-problems', { left: 1 }],
	['too-many-problems', { left: 2 }],
	['not-understood', { reason: 'a fault' }],
	['scan-unit', { key: 'crown_height_mm', says: 38.1, is: 1.5, units: 'mm', meant: 'in' }],
	['unlike-the-card', { key: 'base_width_mm', says: 12, is: 15.25 }],
	['unlikely-size', { height_mm: 0.25, units: 'um' }],
	['crown-base-not-marked', null],
	['not-one-tooth', { why: 'This is hardly one tooth.' }],
	['not-one-tooth', { why: 'This is hardly one tooth.', doubt: { is: 'pieces', n: 3 } }],
	['not-one-tooth', { why: 'This is hardly one tooth.', doubt: { is: 'openings', n: 4 } }],
	['not-one-tooth', { why: 'This is hardly one tooth.', doubt: { is: 'hollow' } }],
	['not-one-tooth', { why: 'This is hardly one tooth.', doubt: { is: 'row' } }],
	['several-pieces', null],
	['colour-unreadable', { why: 'The picture cannot be used: it is damaged.' }],
	['coarse-mesh', null],
	['mark-off-surface', { mark: 'baseMesial', gap_mm: 2.5 }],
	['shape-not-closed', null],
	['scan-not-there', { scan: 'tooth.stl' }],
	['shape-failed', { scan: 'tooth.stl', reason: 'out of memory' }],
	['shape-failed', { scan: null, reason: 'out of memory' }],
	...['empty', 'not-a-number', 'bad-index', 'no-area', 'no-base', 'no-height'].map(
		(code): [`shape-${string}`, unknown] => [
			`shape-${code}`,
			{ scan: null, code, found: 'It has none.', advice: code === 'no-base' ? 'mark' : 'check-file' },
		],
	),
	['shape-no-base', { scan: 'a.stl', code: 'no-base', found: 'None.', advice: 'check-marks' }],
	...[
		'empty',
		'truncated',
		'not-a-mesh',
		'unknown-format',
		'unit-missing',
		'count-lies',
		'damaged',
		'not-a-number',
		'index-out-of-range',
		'no-triangles',
		'no-area',
		'loose-triangles',
		'too-large',
		'compressed-unreadable',
		'feature-unknown',
		'nested-too-deep',
		'external-file-missing',
	].map((code): [`scan-${string}`, unknown] => [
		`scan-${code}`,
		{ scan: 'tooth.stl', code, found: 'It ends early.', advice: 'Copy it again.' },
	]),
];
const inEnglish = ([id, data]: (typeof ELSEWHERE)[number]): Wordable => ({
	id,
	data,
	...wordProblem({ id, data, message: '', remedy: '' }, 'en'),
});
const DESK = Object.keys(EN)
	.filter((id) => id.startsWith('desk-'))
	.flatMap((id) => {
		const code = id.slice(5) as DeskCode;
		const [of] = problems.get('a misspelt key') ?? [];
		const samples: unknown[] = /has-errors|not-possible/.test(id)
			? [null, { line: 4, of }]
			: [{ id: 'skm-9', reason: 'EROFS' }];
		return samples.map((data) => deskProblem(code, data));
	});

const ALL: Wordable[] = [
	...[...problems.values()].flat(),
	...ELSEWHERE.map(inEnglish),
	...DESK.map((problem) => ({ id: `desk-${problem.code}`, ...problem })),
];
const EVERY_ID = Object.keys(EN);

describe('wordProblem', () => {
	it('has at least 60 broken files whose words are known in three languages', () => {
		expect(new Set(TRANSLATED.map((one) => one.case)).size).toBeGreaterThanOrEqual(60);
	});

	it.each(TRANSLATED)('says $id in French and Spanish: $case', ({ case: name, id, fr, es }) => {
		const worded = (language: string) =>
			(problems.get(name) ?? [])
				.filter((problem) => problem.id === id)
				.map((problem) => wordProblem(problem, language))
				.map(({ message, remedy }) => [message, remedy]);
		expect(worded('fr')).toContainEqual(fr);
		expect(worded('es')).toContainEqual(es);
	});

	it('words every message in every language', () => {
		expect(Object.keys(FR).sort()).toEqual([...EVERY_ID].sort());
		expect(Object.keys(ES).sort()).toEqual([...EVERY_ID].sort());
		const shown = new Set(ALL.map(({ id }) => id));
		const families = ['shape-unmeasured', 'scan-unreadable'];
		expect(EVERY_ID.filter((id) => !shown.has(id) && !families.includes(id))).toEqual([]);
	});

	it('gives the English of the problem itself for English and for a language that is none of ours', () => {
		for (const problem of ALL) {
			const own = { message: problem.message, remedy: problem.remedy };
			expect(wordProblem(problem, 'en')).toEqual(own);
			expect(wordProblem(problem, 'de')).toEqual(own);
		}
		expect(['fr', 'fr-CH', 'ES', 'de', ''].map(wordedIn)).toEqual(['fr', 'fr', 'es', 'en', 'en']);
	});

	it('gives the words that came with a problem without data or of an unknown id', () => {
		const words = { message: 'As it came.', remedy: 'Do this.' };
		expect(wordProblem({ id: 'tab-indent', ...words }, 'fr')).toEqual(words);
		expect(wordProblem({ id: 'no-such-message', data: null, ...words }, 'fr')).toEqual(words);
		expect(wordProblem({ id: 'toString', data: null, ...words }, 'fr')).toEqual(words);
	});

	it('needs nothing of a problem that JSON does not carry', () => {
		for (const problem of ALL) {
			const sent = JSON.parse(JSON.stringify(problem)) as Wordable;
			for (const language of ['en', 'fr', 'es'])
				expect(wordProblem(sent, language)).toEqual(wordProblem(problem, language));
		}
	});

	it('says plurals right', () => {
		const say = (left: number, language: string) =>
			wordProblem({ id: 'too-many-problems', data: { left }, message: '', remedy: '' }, language).message;
		expect([1, 2].map((n) => say(n, 'en'))).toEqual([
			'There is 1 more problem in this file.',
			'There are 2 more problems in this file.',
		]);
		expect([1, 2].map((n) => say(n, 'fr'))).toEqual([
			'Ce fichier a encore 1 autre problème.',
			'Ce fichier a encore 2 autres problèmes.',
		]);
		expect([1, 2].map((n) => say(n, 'es'))).toEqual([
			'En este archivo hay 1 problema más.',
			'En este archivo hay 2 problemas más.',
		]);
	});

	it('words the finding behind an answer of the desk too', () => {
		const [of] = problems.get('a misspelt key')!;
		const problem = deskProblem('specimen-has-errors', { line: 7, of });
		expect(problem.message).toBe(`specimen.yaml, line 7: ${of.message}`);
		expect(wordDesk(problem, 'es')).toEqual({
			message: 'specimen.yaml, línea 7: «preservaton» no se conoce aquí. ¿Querías escribir preservation?',
			remedy: 'Escribe preservation: honey',
		});
	});
});

/** All plain texts inside some data. */
function textsIn(data: unknown): string[] {
	if (typeof data === 'string') return [data];
	if (typeof data !== 'object' || data === null) return [];
	return Object.values(data).flatMap(textsIn);
}

/** A text without some words, where they stand as words. */
function without(text: string, words: string): string {
	if (words.length < 2) return text;
	const plain = words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
	return text.replace(new RegExp(`(?<![\\p{L}\\p{N}])${plain}(?![\\p{L}\\p{N}])`, 'gu'), ' ');
}

const ENGLISH =
	/(?<![\p{L}\p{N}_])(the|is|are|of|and|or|it|this|that|with|not|has|have|was|were|from|which|write|here|file|line|an|to|for|at|by|did|you|mean)(?![\p{L}\p{N}_])/iu;
/** Words of French and Spanish, and of lines of the files, that look the same. */
const ALIKE = /\b(on|tu|a|line|for|in|file|from|to|at|by|of|the|it|is)\b(?=:)|\(root, base, tip\)/g;

describe.each(['fr', 'es'])('messages in %s', (language) => {
	const worded = ALL.map((problem): [Wordable, Wording] => [problem, wordProblem(problem, language)]);

	it('are whole: nothing undefined, no object, no double space', () => {
		for (const [{ id }, { message, remedy }] of worded) {
			for (const text of [message, remedy]) {
				expect(text, id).toMatch(/\S/);
				expect(text, id).not.toMatch(/undefined|NaN|\[object|\bnull\b| {2}/);
			}
		}
	});

	it('name what the English names', () => {
		for (const [{ id, message, remedy }, words] of worded) {
			// what stands in quotes, and lines of code such as `crown_height_mm: 38.1`
			const named = [
				...[...message.matchAll(/(?<!\w)"([^"]+)"(?!\w)/g)]
					.map((match) => match[1])
					.filter((one) => /_|\d/.test(one)),
				...[...remedy.matchAll(/(?:Write|example|mean) ([a-z_0-9]+: (?!in )[\w.-]*\w)/g)].map(
					(match) => match[1],
				),
			];
			const both = `${words.message} ${words.remedy}`;
			for (const name of named) {
				// a number in a sentence is written as the language does
				const said = name.replace(/\.(?=\d)/g, ',');
				expect(both.includes(name) || both.includes(said), `${id}: ${name} in ${both}`).toBe(true);
			}
		}
	});

	it('have no English left outside what is quoted from files', () => {
		const examples = Object.values(EXAMPLES).sort((a, b) => b.length - a.length);
		for (const [{ id, data, message }, words] of worded) {
			if (/^(desk-(specimen-has|marks-not))/.test(id)) continue;
			let text = `${words.message} ${words.remedy}`;
			for (const one of [...examples, ...textsIn(data)].sort((a, b) => b.length - a.length))
				text = without(without(text, one), one.length > 60 ? one.slice(0, 28) : one);
			text = text
				// code of the messages' own: after a name and a colon, in brackets, in straight quotes, file names
				.replace(/\b[a-z_0-9]+: .*$/g, ' ')
				.replace(/["'][^"'\n]*["']|[{[][^}\]]*[}\]]|[\w/.-]*\/[\w/.-]*|\S+\.(yaml|md|stl)/g, ' ')
				.replace(ALIKE, ' ')
				.replace(/[«“][^»”]*[»”]/g, ' ');
			expect(ENGLISH.exec(text)?.[0], `${id}: ${text} (${message})`).toBeUndefined();
		}
	});

	it('are spaced and quoted as the language is', () => {
		for (const [{ id, data }, words] of worded) {
			let text = `${words.message} ${words.remedy}`;
			for (const one of textsIn(data)) if (one.length > 1) text = text.replaceAll(one, 'x');
			if (language === 'fr') {
				expect(text, id).not.toMatch(/ [;:?»]|« /);
				expect(text, id).not.toMatch(/[a-zé]»|«[a-zé]/);
			} else {
				expect(text, id).not.toMatch(/\s[;:?»]|«\s/);
				expect((text.match(/¿/g) ?? []).length, id).toBe((text.match(/\?(?! o un #)/g) ?? []).length);
			}
			// typographic apostrophes, but for those in code
			expect(text.replace(/"[^"]*"/g, ''), id).not.toMatch(/[\p{L}]'[\p{L}]/u);
		}
	});
});
