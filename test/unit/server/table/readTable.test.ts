import { describe, expect, it } from 'vitest';
import { decodeTable } from '../../../../src/lib/server/table/decodeTable';
import { readTable } from '../../../../src/lib/server/table/readTable';
import { tableFrom } from './samples';

const TEXT = 'accession;title_fr\r\nSKM 1;Dent à carène, été\r\n';
const bytes = (...values: number[]) => Uint8Array.from(values);
const utf16 = (text: string, big = false): Uint8Array => {
	const made = Buffer.from(text, 'utf16le');
	return big ? made.swap16() : made;
};

describe('decodeTable', () => {
	it.each([
		['utf-8', Buffer.from(TEXT, 'utf8')],
		['utf-8', Buffer.from(`\uFEFF${TEXT}`, 'utf8')],
		['utf-16le', utf16(`\uFEFF${TEXT}`)],
		['utf-16le', utf16(TEXT)],
		['utf-16be', utf16(`\uFEFF${TEXT}`, true)],
		['utf-16be', utf16(TEXT, true)],
		// "Dent à carène, été" of a French spreadsheet's plain CSV
		['windows-1252', Buffer.from(TEXT, 'latin1')],
	] as const)('%s', (encoding, data) => {
		expect(decodeTable(data)).toEqual({ encoding, text: TEXT });
	});

	it('reads the signs that Windows-1252 has and Latin-1 has not', () => {
		// 0x92 is the apostrophe, 0x80 the euro, 0x9C oe: the WHATWG encoding standard's index
		expect(decodeTable(bytes(0x6c, 0x92, 0x9c, 0x75, 0x66, 0x80)).text).toBe('l’œuf€');
	});
});

describe('readTable', () => {
	it.each([
		[',', 'a,b\n1,2\n'],
		[';', 'a;b\n1;2\n'],
		['\t', 'a\tb\n1\t2\n'],
		[';', '"a, and more";b\n1;2\n'],
		[';', 'sep=;\r\na;b\r\n1;2\r\n'],
		[',', 'a,b\r1,2\r'],
	])('finds the sign between cells: %j', (delimiter, text) => {
		const table = tableFrom(text);
		expect(table.delimiter).toBe(delimiter);
		expect(table.rows.map(({ cells }) => cells)).toEqual([['1', '2']]);
	});

	it('tells the line on which each row begins, over lines within cells and empty rows', () => {
		const table = tableFrom('a,b\n"x\ny",1\n\n,\nz,2\n');
		expect(table.rows).toEqual([
			{ line: 2, cells: ['x\ny', '1'] },
			{ line: 6, cells: ['z', '2'] },
		]);
		expect(tableFrom('sep=,\r\na,b\r\n"x\r\ny",1\r\nz,2\r\n').rows.map(({ line }) => line)).toEqual([3, 5]);
	});

	it('says why a file cannot be read', () => {
		expect(readTable(bytes())).toEqual({ ok: false, problem: { code: 'empty' } });
		// a workbook is a zip: PK
		expect(readTable(bytes(0x50, 0x4b, 3, 4))).toEqual({ ok: false, problem: { code: 'workbook' } });
		expect(readTable(new TextEncoder().encode('a,b\n1,2\n"never closed,3\n'))).toEqual({
			ok: false,
			problem: { code: 'quotes', line: expect.any(Number) },
		});
		expect(readTable(new Uint8Array(8_000_001))).toEqual({ ok: false, problem: { code: 'too-large' } });
	});
});
