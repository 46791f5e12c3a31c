import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { editorSchemas } from '../../../src/lib/content/editorSchemas';
import { fileKind } from '../../../src/lib/content/fileKind';
import { editorSchemaFiles } from '../../../src/lib/server/writeEditorSchemas';

const CONTENT = path.resolve(__dirname, '../../../content');
const schemas = editorSchemas();

/** Name of the schema of a file, by the kind of file. */
function schemaOf(file: string): string | null {
	const kind = fileKind(file);
	switch (kind.kind) {
		case 'exhibit':
		case 'sources':
		case 'screens':
		case 'specimen':
		case 'group':
		case 'bed':
		case 'glossary':
		case 'quiz-settings':
		case 'feeding-words':
		case 'quiz-words':
		case 'replacement-words':
		case 'ui':
			return `${kind.kind}.json`;
		case 'prey':
		case 'jaw':
			return `feeding-${kind.kind}.json`;
		case 'feeding':
			return `feeding-${kind.part}.json`;
		case 'quiz':
		case 'replacement':
			return `${kind.kind}-${kind.table}.json`;
		default:
			return null;
	}
}

/** The schema read back by the other half of the library, which knows nothing of how it was written. */
const reader = (name: string) => z.fromJSONSchema(schemas[name] as Parameters<typeof z.fromJSONSchema>[0]);
const files = readdirSync(CONTENT, { recursive: true, encoding: 'utf8' })
	.map((file) => file.replaceAll(path.sep, '/'))
	.filter((file) => file.endsWith('.yaml') && !file.startsWith('templates/'));

describe('editorSchemas', () => {
	it('are in content/.schemas as they are made now: npx tsx src/lib/server/writeEditorSchemas.ts', () => {
		const made = editorSchemaFiles();
		expect(readdirSync(path.join(CONTENT, '.schemas')).sort()).toEqual(Object.keys(made).sort());
		for (const [name, text] of Object.entries(made)) {
			expect(readFileSync(path.join(CONTENT, '.schemas', name), 'utf8'), name).toBe(text);
		}
	});

	it('let every file of the demo exhibit pass, and leave none of their kinds out', () => {
		const used = new Set<string>();
		for (const file of files) {
			const name = schemaOf(file);
			if (name === null) continue;
			used.add(name);
			const value: unknown = parse(readFileSync(path.join(CONTENT, file), 'utf8'));
			expect(reader(name).safeParse(value).error?.issues ?? [], file).toEqual([]);
		}
		expect([...used].sort()).toEqual(Object.keys(schemas).sort());
	});

	it('refuse what the check refuses: a key too many, a wrong choice, a text for a number, half a point', () => {
		const specimen = parse(
			readFileSync(path.join(CONTENT, 'specimens/skm-0104/specimen.yaml'), 'utf8'),
		) as Record<string, unknown>;
		const accepts = (value: unknown) => reader('specimen.json').safeParse(value).success;
		expect(accepts(specimen)).toBe(true);
		expect(accepts({ ...specimen, colour: 'brown' })).toBe(false);
		expect(accepts({ ...specimen, part: 'tooth' })).toBe(false);
		expect(accepts({ ...specimen, declared: { crown_height_mm: '38' } })).toBe(false);
		const crown = (apex_mm: number[]) => ({
			scan: {
				file: 'scan.stl',
				units: 'mm',
				crown: { apex_mm, base_mesial_mm: [1, 0, 0], base_distal_mm: [0, 1, 0] },
			},
		});
		expect(accepts({ ...specimen, shape: crown([1, 2, 3]) })).toBe(true);
		expect(accepts({ ...specimen, shape: crown([1, 2]) })).toBe(false);
	});

	it('show an example with a key, the one that fits its place', () => {
		const properties = JSON.stringify(schemas['specimen.json']);
		expect(properties).toContain('For example: accession: SKM 0104');
		expect(properties).toContain('For example: shape: oval');
	});

	it('are named on top of the files of the demo by a path that leads there', () => {
		let named = 0;
		for (const file of files) {
			const line = /^# yaml-language-server: \$schema=(\S+)\n/.exec(
				readFileSync(path.join(CONTENT, file), 'utf8'),
			);
			if (!line) continue;
			named++;
			expect(path.posix.join(path.posix.dirname(file), line[1]), file).toBe(`.schemas/${schemaOf(file)}`);
		}
		expect(named).toBeGreaterThanOrEqual(files.filter((file) => file.endsWith('specimen.yaml')).length);
	});
});
