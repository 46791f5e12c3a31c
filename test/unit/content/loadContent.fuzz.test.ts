import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createContentCache, loadContent } from '../../../src/lib/content/loadContent';
import { memoryReader } from './memoryReader';
import { VALID_CONTENT } from './validContent';

const TEXT_FILES = Object.keys(VALID_CONTENT).filter((path) => /\.(yaml|md)$/.test(path));

/** What slips of the hand and of programs leave in a file. */
const SCRAPS = [
	'\t', ' ', '  ', '\n', '\r\n', ':', ': ', '- ', '-', '#', ' #', '"', "'", '{', '}', '[', ']', ',', '&a ', '*a ', '!', '|', '>',
	'%', '@', '`', '?', '---\n', '...\n', '\u0000', '\uFEFF', '\uFFFD', '\u2028', '__proto__: 1\n', 'constructor: 1\n', 'null', '~',
	'1e999', '.nan', '-.inf', '0x10', '<<: *a\n', '!!binary x', '\\', '{{', '}}', 'é', '\uD800',
]; // prettier-ignore

type Edit = (text: string) => string;

const at = (text: string, where: number) => Math.floor(where * (text.length + 1));
const part = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });

const edit: fc.Arbitrary<Edit> = fc.oneof(
	// cut a piece out
	fc.tuple(part, fc.nat(60)).map(
		([where, size]): Edit =>
			(text) =>
				text.slice(0, at(text, where)) + text.slice(at(text, where) + size),
	),
	// break off
	part.map(
		(where): Edit =>
			(text) =>
				text.slice(0, at(text, where)),
	),
	// put something in
	fc.tuple(part, fc.oneof(fc.constantFrom(...SCRAPS), fc.string({ unit: 'binary', maxLength: 6 }))).map(
		([where, scrap]): Edit =>
			(text) =>
				text.slice(0, at(text, where)) + scrap + text.slice(at(text, where)),
	),
	// swap two lines
	fc.tuple(part, part).map(([a, b]): Edit => (text) => {
		const lines = text.split('\n');
		const [i, j] = [Math.floor(a * lines.length), Math.floor(b * lines.length)];
		[lines[i], lines[j]] = [lines[j], lines[i]];
		return lines.join('\n');
	}),
	// say a line again, set in otherwise
	fc.tuple(part, fc.nat(6)).map(([a, spaces]): Edit => (text) => {
		const lines = text.split('\n');
		const i = Math.floor(a * lines.length);
		lines.splice(i, 0, ' '.repeat(spaces) + lines[i].trim());
		return lines.join('\n');
	}),
);

const damage = fc.array(
	fc.tuple(fc.constantFrom(...TEXT_FILES), fc.array(edit, { minLength: 1, maxLength: 3 })),
	{
		minLength: 1,
		maxLength: 3,
	},
);

describe('loadContent with damaged files', () => {
	it('never throws, and gives an exhibit or says why not (seed 20261125)', async () => {
		// kept by text, so that only damaged files are read anew
		const cache = createContentCache();
		await fc.assert(
			fc.asyncProperty(damage, async (damages) => {
				const files: Record<string, string> = { ...VALID_CONTENT };
				for (const [path, edits] of damages) for (const change of edits) files[path] = change(files[path]);
				const { draft, problems } = await loadContent(memoryReader(files), cache);

				const errors = problems.filter(({ severity }) => severity === 'error');
				expect(draft !== null || errors.length > 0).toBe(true);
				// what is left out has a reason
				if (draft && draft.specimens.length < 2) expect(errors.length).toBeGreaterThan(0);
				for (const problem of problems) {
					const lines = (files[problem.file] ?? '').replace(/\r\n?/g, '\n').split('\n');
					expect(problem.line).toBeGreaterThanOrEqual(1);
					expect(problem.line).toBeLessThanOrEqual(lines.length + 1);
					expect(problem.column).toBeGreaterThanOrEqual(1);
					expect(problem.message.length).toBeGreaterThan(10);
					expect(problem.remedy.length).toBeGreaterThan(5);
					expect(problem.message + problem.remedy).not.toMatch(/undefined|NaN|\[object/);
				}
				// whatever is shown can be shown in full
				for (const specimen of draft?.specimens ?? []) {
					expect(specimen.text[draft!.languages[0].code].title).toBeTruthy();
					expect(draft!.groups.map(({ id }) => id)).toContain(specimen.group);
					for (const source of specimen.sources) expect(draft!.sources.map(({ id }) => id)).toContain(source);
				}
			}),
			{ seed: 20261125, numRuns: 600 },
		);
	});
});
