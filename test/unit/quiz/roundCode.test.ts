import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AGE_BANDS, ROUND_LENGTHS } from '../../../src/lib/domain/quiz/question';
import { luhnDigit, readRoundCode, roundCode } from '../../../src/lib/domain/quiz/roundCode';

describe('roundCode', () => {
	it('gives the published check digit', () => {
		// worked example of ISO/IEC 7812-1 Annex B in general literature: 7992739871 has check digit 3 (from memory)
		expect(luhnDigit('7992739871')).toBe('3');
	});

	it('brings every plan back, however it is spaced', () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...AGE_BANDS),
				fc.constantFrom(...ROUND_LENGTHS),
				fc.integer({ min: 0, max: 9999 }),
				(band, length, seed) => {
					const code = roundCode({ band, length, seed });
					expect(code).toMatch(/^\d{6}$/);
					expect(readRoundCode(`${code.slice(0, 3)} ${code.slice(3)}`)).toEqual({ band, length, seed });
				},
			),
		);
	});

	it('notices every single wrong digit', () => {
		const code = roundCode({ band: '7-11', length: 10, seed: 4712 });
		for (let at = 0; at < 6; at += 1)
			for (let digit = 0; digit < 10; digit += 1) {
				const typed = code.slice(0, at) + digit + code.slice(at + 1);
				if (typed !== code) expect(readRoundCode(typed), typed).toBeNull();
			}
	});

	it('notices swaps of neighbours but 0 with 9, which the check cannot see', () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1, max: 3 }), (seed, at) => {
				const code = roundCode({ band: '5-7', length: 5, seed });
				const [a, b] = [code[at], code[at + 1]];
				fc.pre(
					a !== b && new Set([a, b]).size === 2 && !(a === '0' && b === '9') && !(a === '9' && b === '0'),
				);
				expect(readRoundCode(code.slice(0, at) + b + a + code.slice(at + 2))).toBeNull();
			}),
		);
	});

	it('reads nothing into what is no code', () => {
		for (const typed of ['', '12345', '1234567', 'abcdef', '000000', '12 34 5x'])
			expect(readRoundCode(typed)).toBeNull();
		expect(() => roundCode({ band: '5-7', length: 5, seed: 10_000 })).toThrow(/seed/);
	});
});
