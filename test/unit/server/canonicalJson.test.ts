import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../../src/lib/server/canonicalJson';

describe('canonicalJson', () => {
	it('does not depend on the order in which keys were written', () => {
		expect(canonicalJson({ b: 1, a: { d: [1, 2], c: null } })).toBe('{"a":{"c":null,"d":[1,2]},"b":1}');
		expect(canonicalJson({ a: { c: null, d: [1, 2] }, b: 1 })).toBe('{"a":{"c":null,"d":[1,2]},"b":1}');
	});

	it('leaves undefined members out, as JSON does', () => {
		expect(canonicalJson({ a: undefined, b: 1 })).toBe('{"b":1}');
	});

	it('says the same as JSON for any value (seed 7)', () => {
		fc.assert(
			fc.property(fc.jsonValue(), (value) => {
				const back: unknown = JSON.parse(canonicalJson(value));
				expect(back).toEqual(JSON.parse(JSON.stringify(value)));
			}),
			{ seed: 7 },
		);
	});

	it('refuses numbers that JSON cannot hold', () => {
		expect(() => canonicalJson({ a: Number.NaN })).toThrow('canonicalJson: NaN');
	});
});
