import { describe, expect, it } from 'vitest';
import { readYaml } from '../../../src/lib/content/readYaml';

describe('readYaml', () => {
	it('gives values with the place of each', () => {
		const { value, places, findings } = readYaml('a: 1\nb:\n  - { c: x }\n  - d: [2, 3]\n', {
			linesBefore: 10,
		});
		expect(findings).toEqual([]);
		expect(JSON.parse(JSON.stringify(value))).toEqual({ a: 1, b: [{ c: 'x' }, { d: [2, 3] }] });
		expect(places.get('a')).toEqual({ key: { line: 11, column: 1 }, value: { line: 11, column: 4 } });
		expect(places.get('b[0].c')).toEqual({ key: { line: 13, column: 7 }, value: { line: 13, column: 10 } });
		expect(places.get('b[1].d[1]')?.value).toEqual({ line: 14, column: 12 });
	});

	it('keeps names that look like numbers as they are written', () => {
		expect(Object.keys(readYaml('0104: a\n1.0: b\n').value as object)).toEqual(['0104', '1.0']);
	});

	it('cannot be used to reach into objects of the program', () => {
		const { value } = readYaml('__proto__: { admin: true }\nconstructor: x\n');
		expect(({} as Record<string, unknown>).admin).toBeUndefined();
		expect(Object.getPrototypeOf(value)).toBeNull();
	});

	it('does not unfold references, so none can grow without end', () => {
		const bomb = [
			'a: &a [x, x]',
			...'bcdefghi'.split('').map((c, i) => `${c}: &${c} [*${'abcdefgh'[i]}, *${'abcdefgh'[i]}]`),
		];
		const { value, findings } = readYaml(bomb.join('\n'));
		expect(value).toBeUndefined();
		expect(new Set(findings.map(({ id }) => id))).toEqual(new Set(['reference-sign']));
	});

	// each of these once took minutes, or ended the program
	it.each([
		['open brackets', '['.repeat(500_000)],
		['hyphens on a line', '- '.repeat(250_000)],
		['hyphens on the second line', `a:\n${'- '.repeat(250_000)}`],
		['quotes on a line', '"'.repeat(500_000)],
		['stars on a line', '*a '.repeat(150_000)],
		['empty brackets on a line', '[]'.repeat(250_000)],
		['lines set in ever further', Array.from({ length: 900 }, (_, i) => `${' '.repeat(i)}k:`).join('\n')],
	])('refuses %s at once', (_, text) => {
		expect(readYaml(text).findings.map(({ id }) => id)).toEqual(['too-deep']);
	});

	it('reads a hundred thousand names without comparing each with each', () => {
		const names = Array.from({ length: 100_000 }, (_, i) => `k${i}: 1`);
		const { value, findings } = readYaml(names.join('\n'));
		expect(findings).toEqual([]);
		expect(Object.keys(value as object)).toHaveLength(100_000);
	});
});
