import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { fsReader } from '../../../../src/lib/server/fsReader';
import { parseImportRequest, runImport, unpackTable } from '../../../../src/lib/server/table/importRequest';
import { VALID_CONTENT } from '../../content/validContent';
import { deskOn } from '../desk/deskFolder';
import { put, scratchFolder } from '../samples';

const FACTS = 'specimens/skm-0001/specimen.yaml';
const TABLE = new TextEncoder().encode('id,jaw_place\nskm-0001,back\n');

async function content(): Promise<string> {
	const folder = await scratchFolder();
	for (const [path, text] of Object.entries(VALID_CONTENT)) await put(folder, path, text);
	return folder;
}
const run = async (folder: string, write: string | null) =>
	runImport(await deskOn(folder), folder, fsReader(folder), ['en', 'fr'], TABLE, { chosen: {}, write });

describe('runImport', () => {
	it('writes nothing until it is told to, and then just what it showed', async () => {
		const folder = await content();
		const planned = await run(folder, null);
		if (!planned.ok) throw new Error(planned.problem.code);
		expect(planned.value).toMatchObject({ files: 1, rows: [{ outcome: 'changed' }] });
		expect(planned.value.written).toBeUndefined();
		expect(await readFile(join(folder, FACTS), 'utf8')).toBe(VALID_CONTENT[FACTS]);
		expect(await run(folder, planned.value.hash)).toMatchObject({ ok: true, value: { written: 1 } });
		expect(await readFile(join(folder, FACTS), 'utf8')).toBe(
			VALID_CONTENT[FACTS].replace('bed: upper-marl\n', 'bed: upper-marl\njaw_place: back\n'),
		);
		expect(await run(folder, null)).toMatchObject({ ok: true, value: { files: 0 } });
	});

	it('writes nothing when a file has been changed in between', async () => {
		const folder = await content();
		const planned = await run(folder, null);
		if (!planned.ok) throw new Error(planned.problem.code);
		const edited = VALID_CONTENT[FACTS].replace('honey', 'black');
		await put(folder, FACTS, edited);
		expect(await run(folder, planned.value.hash)).toEqual({
			ok: false,
			problem: { code: 'changed-meanwhile', written: 0 },
		});
		expect(await readFile(join(folder, FACTS), 'utf8')).toBe(edited);
	});
});

describe('parseImportRequest', () => {
	const parse = (query: string) => parseImportRequest(new URLSearchParams(query));
	it('takes what the page sends and nothing else', () => {
		expect(parse('')).toEqual({ chosen: {}, write: null });
		expect(parse('columns={"0":"id","3":null}')).toEqual({ chosen: { 0: 'id', 3: null }, write: null });
		expect(parse(`write=${'a'.repeat(64)}`)?.write).toBe('a'.repeat(64));
		for (const query of ['write=x', 'columns=[', 'columns={"a":"id"}', 'columns={"0":1}'])
			expect(parse(query), query).toBeNull();
	});
});

describe('unpackTable', () => {
	it('unpacks a table, but not one that swells beyond its limit', () => {
		expect(unpackTable(gzipSync('a,b'))).toEqual({ ok: true, value: Buffer.from('a,b') });
		expect(unpackTable(gzipSync(Buffer.alloc(9_000_000)))).toEqual({
			ok: false,
			problem: { code: 'too-large' },
		});
		expect(unpackTable(new TextEncoder().encode('a,b'))).toEqual({ ok: false, problem: { code: 'empty' } });
	});
});
