import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { editorSchemas } from '../../../src/lib/content/editorSchemas';
import { fileKind } from '../../../src/lib/content/fileKind';
import { loadContent } from '../../../src/lib/content/loadContent';
import type { Problem } from '../../../src/lib/content/problem';
import { fsReader } from '../../../src/lib/server/fsReader';

const CONTENT = path.resolve(__dirname, '../../../content');
const TEMPLATES = path.join(CONTENT, 'templates');
const schemas = editorSchemas();
const files = readdirSync(TEMPLATES, { recursive: true, encoding: 'utf8' })
	.map((name) => name.replaceAll(path.sep, '/'))
	.filter((name) => /\.(yaml|md)$/.test(name) && name !== 'README.md');
const read = (name: string) => readFileSync(path.join(TEMPLATES, name), 'utf8');

/** What a curator does: writes the example of each line that is empty. */
const filled = (text: string) => text.replace(/:[ ]+# for example: (.*)$/gm, ': $1');
const toFill = (text: string) =>
	text.split('\n').flatMap((line, i) => (/:[ ]+# for example: /.test(line) ? [i + 1] : []));

/** Templates that are copied whole, and where the copy stands. */
const COPIES: Readonly<Record<string, string>> = {
	'specimens/new-model/specimen.yaml': 'specimens/skm-0200/specimen.yaml',
	'specimens/new-model/label.en.md': 'specimens/skm-0200/label.en.md',
	'specimens/new-scan/specimen.yaml': 'specimens/skm-0201/specimen.yaml',
	'specimens/new-scan/label.en.md': 'specimens/skm-0201/label.en.md',
	'groups/new-animal.yaml': 'groups/tylosaurus.yaml',
	'groups/new-animal.en.md': 'groups/tylosaurus.en.md',
	'beds/new-bed.yaml': 'beds/middle-sand.yaml',
	'beds/new-bed.en.md': 'beds/middle-sand.en.md',
	'feeding/prey/new-prey.yaml': 'feeding/prey/shark.yaml',
	'feeding/jaws/new-jaw.yaml': 'feeding/jaws/short-jaw.yaml',
};
const whereItStands = (name: string) =>
	COPIES[name] ?? (name === 'exhibit.yaml' ? name : `templates/${name}`);
const blocks = files.filter((name) => !(name in COPIES));

/** Problems of the copies when each is put down as `change` makes it. */
async function check(change: (text: string) => string): Promise<Problem[]> {
	const folder = mkdtempSync(path.join(tmpdir(), 'tooth-table-templates-'));
	try {
		cpSync(CONTENT, folder, { recursive: true });
		for (const [from, to] of Object.entries(COPIES)) {
			const target = path.join(folder, to);
			cpSync(path.join(TEMPLATES, from), target, { recursive: true });
			writeFileSync(target, change(read(from)));
		}
		writeFileSync(path.join(folder, 'specimens/skm-0201/scan.stl'), 'solid a\nendsolid a\n');
		const { problems } = await loadContent(fsReader(folder));
		return problems.filter(({ file }) => Object.values(COPIES).includes(file));
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

let untouched: Problem[];
let done: Problem[];
beforeAll(async () => {
	untouched = await check((text) => text);
	done = await check(filled);
});

describe('content/templates', () => {
	it('has one for every kind of file that a curator adds to', () => {
		const kinds = new Set(
			files.map((name) => {
				const kind = fileKind(name.replace('/new-', '/a-'));
				return 'table' in kind
					? `${kind.kind}/${kind.table}`
					: 'part' in kind
						? `${kind.kind}/${kind.part}`
						: kind.kind;
			}),
		);
		expect([...kinds].sort()).toEqual(
			[
				...['bed', 'exhibit', 'glossary', 'group', 'jaw', 'prey', 'sources', 'specimen', 'text'],
				...['feeding/everyday', 'feeding/materials', 'feeding/ridges'],
				...['quiz/claims', 'quiz/questions', 'quiz/rounds'],
				...['animals', 'counts', 'jaws', 'mysteries', 'slices', 'wear'].map((name) => `replacement/${name}`),
			].sort(),
		);
	});

	it('is not part of the exhibit itself', () => {
		for (const name of files) expect(fileKind(`templates/${name}`)).toEqual({ kind: 'ignored' });
		expect(fileKind('help/label.svg')).toEqual({ kind: 'ignored' });
	});

	it.each(Object.keys(COPIES))(
		'%s: the check names every empty line of a copy, and says what to write',
		(name) => {
			const lines = toFill(read(name));
			expect(lines.length).toBeGreaterThan(0);
			const told = untouched.filter(({ file, severity }) => file === COPIES[name] && severity === 'error');
			expect([...new Set(told.map(({ line }) => line))].filter((line) => lines.includes(line))).toEqual(
				lines,
			);
			for (const { remedy } of told) expect(remedy).not.toBe('');
		},
	);

	it('is finished when the empty lines are filled: no error is left', () => {
		const words = /missing-translation|words/; // words in other files come after
		const left = done.filter(({ severity, id }) => severity === 'error' && !words.test(id));
		expect(left.map(({ file, line, message }) => `${file}:${line} ${message}`)).toEqual([]);
	});

	it.each(blocks.filter((name) => name.endsWith('.yaml')))(
		'%s: a block is refused while empty, and right when filled',
		(name) => {
			const [, schema] = /\$schema=[./]*\.schemas\/(.*)/.exec(read(name)) ?? [];
			const reader = z.fromJSONSchema(schemas[schema] as Parameters<typeof z.fromJSONSchema>[0]);
			expect(reader.safeParse(parse(read(name))).success).toBe(false);
			const { error } = reader.safeParse(parse(filled(read(name))));
			expect(error?.issues ?? []).toEqual([]);
		},
	);
});

describe('every YAML file of the demo', () => {
	const yaml = readdirSync(CONTENT, { recursive: true, encoding: 'utf8' })
		.map((name) => name.replaceAll(path.sep, '/'))
		.filter((name) => name.endsWith('.yaml'));

	it('tells text editors its schema in the first line', () => {
		for (const name of yaml) {
			const [first] = readFileSync(path.join(CONTENT, name), 'utf8').split('\n', 1);
			const [, at] = /^# yaml-language-server: \$schema=(.*)$/.exec(first) ?? [];
			expect([name, at !== undefined]).toEqual([name, true]);
			// the path of what is copied whole is right where the copy will stand
			const stands = name.startsWith('templates/') ? whereItStands(name.slice('templates/'.length)) : name;
			const leads = path.posix.join(path.posix.dirname(stands), at ?? '');
			expect([name, Object.keys(schemas).some((known) => leads === `.schemas/${known}`)]).toEqual([
				name,
				true,
			]);
		}
	});
});
