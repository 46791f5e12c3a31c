import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { ContentReader } from '../../../../src/lib/content/draft';
import { specimenFiles } from '../../../../src/lib/server/table/specimenFiles';
import type { ImportContext } from '../../../../src/lib/server/table/planImport';
import { readTable, type Table } from '../../../../src/lib/server/table/readTable';
import { VALID_CONTENT } from '../../content/validContent';
import { memoryReader } from '../../content/memoryReader';

const CONTENT = path.resolve(__dirname, '../../../../content');

/** The demo exhibit's texts by path. */
export function demoFiles(): Record<string, string> {
	const files: Record<string, string> = {};
	for (const name of readdirSync(CONTENT, { recursive: true, encoding: 'utf8' })) {
		if (/\.(yaml|md|svg)$/.test(name))
			files[name.replaceAll(path.sep, '/')] = readFileSync(path.join(CONTENT, name), 'utf8');
		else if (/\.(stl|ply)$/.test(name)) files[name.replaceAll(path.sep, '/')] = 'solid';
	}
	return files;
}

/** What an import is planned on: the small valid exhibit, or other files. */
export async function contextOf(
	files: Record<string, string> = { ...VALID_CONTENT },
	languages: string[] = ['en', 'fr'],
): Promise<ImportContext & { reader: ContentReader }> {
	const reader = memoryReader(files);
	const { specimens } = await specimenFiles(reader, async (path) => files[path] ?? null);
	return { reader, specimens, languages };
}

export function tableFrom(text: string | Uint8Array): Table {
	const read = readTable(typeof text === 'string' ? new TextEncoder().encode(text) : text);
	if (!read.ok) throw new Error(`tableFrom: ${read.problem.code}`);
	return read.value;
}
