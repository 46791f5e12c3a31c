import { describe, expect, it } from 'vitest';
import { KIND, readExportList } from '../../../../src/lib/kiosk/offline/exportList';

const file = { path: 'fr/index.html', bytes: 3, sha256: 'a'.repeat(64) };
const list = { kind: KIND, version: 'v', exhibit: 'e', code: 'c', files: [file] };
const read = (what: object) => readExportList(JSON.stringify({ ...list, ...what }));

describe('readExportList', () => {
	it('reads a list', () => {
		expect(read({})).toEqual(list);
	});

	it('refuses what is none', () => {
		expect(readExportList('<!doctype html>')).toBe(null);
		expect(readExportList('null')).toBe(null);
		expect(read({ kind: 'another' })).toBe(null);
		expect(read({ version: 1 })).toBe(null);
		expect(read({ files: [{ ...file, sha256: 'short' }] })).toBe(null);
		expect(read({ files: [null] })).toBe(null);
		for (const path of ['/etc/x', '../x', 'a/../../x', 'https://outside.example/x', 'a\\b', 'a?b', '.'])
			expect(read({ files: [{ ...file, path }] }), path).toBe(null);
	});
});
