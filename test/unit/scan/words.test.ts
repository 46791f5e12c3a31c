import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn, Words } from '../../../src/lib/server/scan/words';

const parse = (text: string): number => {
	const bytes = new TextEncoder().encode(`x${text}y`);
	return numberIn(bytes, 1, bytes.length - 1);
};

describe('numberIn', () => {
	it('reads what the language itself reads, to the last digit (seed 3)', () => {
		fc.assert(
			fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(20), (value, digits) => {
				for (const text of [String(value), value.toExponential(digits), value.toPrecision(digits + 1)]) {
					expect(parse(text)).toBe(Number(text));
				}
			}),
			{ seed: 3, numRuns: 3000 },
		);
	});

	it.each([
		'1',
		'-1',
		'+1',
		'.5',
		'5.',
		'-0',
		'1e5',
		'1E+05',
		'1e-7',
		'0012',
		'123456789012345678901234567890',
		'1e400',
	])('%s', (text) => expect(parse(text)).toBe(Number(text)));

	it.each(['', '-', '.', 'e5', '1e', '1e+', '1,5', '1.2.3', '0x10', 'nan', 'inf', '1_000', '--1', '1f'])(
		'"%s" is no number',
		(text) => expect(parse(text)).toBeNaN(),
	);
});

describe('Words', () => {
	it('walks words and lines with every line end, and counts lines', () => {
		for (const end of ['\n', '\r\n', '\r']) {
			const words = new Words(new TextEncoder().encode(['one  two\tthree', '', 'Four'].join(end)));
			const seen: [string, number][] = [];
			while (words.nextAnywhere()) seen.push([words.text(), words.line]);
			expect(seen).toEqual([
				['one', 1],
				['two', 1],
				['three', 1],
				['Four', 3],
			]);
		}
	});

	it('compares words without regard to capitals', () => {
		const words = new Words(new TextEncoder().encode('VerTex'));
		expect(words.next()).toBe(true);
		expect(['vertex', 'verte', 'vertexes', 'facets'].map((word) => words.is(word))).toEqual([
			true,
			false,
			false,
			false,
		]);
	});

	it('comes to an end whatever the bytes are (seed 5)', () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
				const words = new Words(bytes);
				let steps = 0;
				while (words.nextAnywhere()) steps++;
				expect(steps).toBeLessThanOrEqual(bytes.length);
			}),
			{ seed: 5, numRuns: 500 },
		);
	});
});
