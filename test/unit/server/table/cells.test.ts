import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mapColumns, tableColumns } from '../../../../src/lib/server/table/columns';
import { guardFormula, isFormula, unguardFormula } from '../../../../src/lib/server/table/guardFormula';
import { hasDecimalComma, readNumber } from '../../../../src/lib/server/table/readNumber';

describe('guardFormula', () => {
	it.each(['=1+1', '+49', '-2', '@SUM(A1)', '\t=1', '=HYPERLINK("x")', '- a list', '-'])(
		'guards %j',
		(text) => {
			expect(guardFormula(text)).toBe(`'${text}`);
		},
	);
	it.each(['SKM 0104', 'a=b', '', '“=”', "l'os", "'quoted'"])('leaves %j as it is', (text) => {
		expect(guardFormula(text)).toBe(text);
	});
	it('gives back what it was given, for any text', () => {
		fc.assert(
			fc.property(
				fc.string({ unit: fc.constantFrom("'", '=', '-', '@', '+', '\t', '\r', 'a', ' ') }),
				(text) => {
					expect(unguardFormula(guardFormula(text))).toBe(text);
					expect(isFormula(guardFormula(text)) && text.trimStart() === text).toBe(false);
				},
			),
			{ seed: 9 },
		);
	});
	it('knows what would be run', () => {
		expect(['=1', '+1', '@a', '-1', '-cmd'].map(isFormula)).toEqual([true, true, true, true, true]);
		expect(['- one', '--', 'a', "'=1"].map(isFormula)).toEqual([false, false, false, false]);
	});
});

describe('readNumber', () => {
	it.each([
		['38.1', 1, undefined, 38.1],
		['38,1', 1, undefined, 38.1],
		['38', 1, undefined, 38],
		['38.1 mm', 1, undefined, 38.1],
		['3,81', 10, true, 38.1],
		['3.81 cm', 1, false, 38.1],
		['1.5 in', 1, false, 38.1],
		['250 µm', 1, false, 0.25],
		['1.234,5', 1, undefined, 1234.5],
		['1,234.5', 1, undefined, 1234.5],
		['1 234,5', 1, true, 1234.5],
		['1,234', 1, true, 1.234],
		['1,234', 1, false, 1234],
		['1,234', 1, undefined, 'which-separator'],
		['1.234', 1, true, 'which-separator'],
		['1.234', 1, undefined, 1.234],
		['1.234.567', 1, undefined, 1234567],
		['about 38', 1, undefined, 'not-a-number'],
		['38 kg', 1, undefined, 'not-a-number'],
		['-5', 1, undefined, 'not-a-number'],
		['1.2.3', 1, undefined, 'not-a-number'],
		['', 1, undefined, 'not-a-number'],
	] as const)('%s x %d (comma %s) is %s', (cell, factor, comma, value) => {
		expect(readNumber(cell, factor, comma)).toBe(value);
	});

	it('sees from the other numbers whether decimals have a comma', () => {
		expect(hasDecimalComma(['1,234', '38,1'])).toBe(true);
		expect(hasDecimalComma(['1,234', '38.1'])).toBe(false);
		expect(hasDecimalComma(['1,234', '38'])).toBeUndefined();
		expect(hasDecimalComma(['38,1', '38.1'])).toBeUndefined();
	});
});

describe('mapColumns', () => {
	const columns = tableColumns(['en', 'fr']);
	const map = (header: string[], chosen = {}) =>
		mapColumns(header, [], columns, chosen).map(({ column, factor, leftOut }) => leftOut ?? [column, factor]);

	it.each([
		['crown height (mm)', ['card_crown_height_mm', 1]],
		['Crown height [cm]', ['card_crown_height_mm', 10]],
		['Crown height, in', ['card_crown_height_mm', 25.4]],
		['card_crown_height_mm', ['card_crown_height_mm', 1]],
		['Hauteur de la couronne (mm)', ['card_crown_height_mm', 1]],
		['CBL mm', ['card_base_length_mm', 1]],
		['crown height', 'no-unit'],
		['Accession Number', ['accession', undefined]],
		['Numéro d’inventaire', ['accession', undefined]],
		["Numero d'inventaire", ['accession', undefined]],
		['title_fr', ['title_fr', undefined]],
		['Title (FR)', ['title_fr', undefined]],
		['title_de', 'unknown'],
		['shelf', 'unknown'],
	])('%s', (head, expected) => {
		expect(map([head])).toEqual([expected]);
	});

	it('takes the first of two heads that mean the same, and follows what was chosen', () => {
		expect(map(['group', 'Groupe'])).toEqual([['group', undefined], 'twice']);
		expect(map(['group', 'what is it?'], { 0: null, 1: 'group' })).toEqual(['chosen', ['group', undefined]]);
		expect(map(['group'], { 0: 'constructor' })).toEqual(['unknown']);
	});
});
