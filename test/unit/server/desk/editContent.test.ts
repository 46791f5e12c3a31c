import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMap, isScalar, isSeq, parseDocument, type Node } from 'yaml';
import { fieldPath } from '../../../../src/lib/content/fieldPath';
import { editContent } from '../../../../src/lib/server/desk/editContent';
import { takeApart } from '../../../../src/lib/server/table/labelFile';

interface Spot {
	file: string;
	/** field path of a single value */
	path: string;
	from: number;
	to: number;
}

/** Every single value of the demo's files, with the place where the library says it stands. */
function everySpot(): { spots: Spot[]; texts: Map<string, string> } {
	const folder = join(import.meta.dirname, '../../../../content');
	const spots: Spot[] = [];
	const texts = new Map<string, string>();
	for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
		if (file.includes('.schemas') || !/\.(yaml|md)$/.test(file)) continue;
		const text = readFileSync(join(folder, file), 'utf8');
		const parts = file.endsWith('.md') ? takeApart(text) : { open: '', top: text };
		if (!parts) continue;
		texts.set(file, text);
		const walk = (node: unknown, path: (string | number)[]): void => {
			if (isMap(node)) for (const { key, value } of node.items) walk(value, [...path, keyOf(key)]);
			else if (isSeq(node)) node.items.forEach((item, i) => walk(item, [...path, i]));
			else if (isScalar(node) && node.value !== null && path.every((step) => !String(step).includes('.'))) {
				const [from, to] = (node as Node).range!;
				const at = parts.open.length;
				spots.push({ file, path: fieldPath(path), from: from + at, to: to + at });
			}
		};
		walk(parseDocument(parts.top).contents, []);
	}
	return { spots, texts };
}

const keyOf = (key: unknown): string => String(isScalar(key) ? (key.source ?? key.value) : key);
const value = fc.oneof(
	fc.string({ unit: 'grapheme', maxLength: 40 }).filter((text) => !/\p{C}/u.test(text)),
	fc.constantFrom(
		'no',
		'0104',
		'1:30:00',
		'a: b #c',
		'- x',
		'',
		' ',
		'"',
		"it's",
		'{',
		'2026-12-01',
		'~',
		'=1',
	),
	fc
		.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 })
		.map((n) => Number(n.toPrecision(6)) + 0),
	fc.boolean(),
);

describe('editContent', () => {
	const { spots, texts } = everySpot();
	// as many of a small file as of a large one
	const anySpot = fc
		.constantFrom(...texts.keys())
		.map((file) => spots.filter((spot) => spot.file === file))
		.filter((some) => some.length > 0)
		.chain((some) => fc.constantFrom(...some));

	it('changes any value of any file of the demo, and not one byte beside it', () => {
		expect(spots.length).toBeGreaterThan(2000);
		fc.assert(
			fc.property(anySpot, value, fc.boolean(), (spot, wanted, windows) => {
				const { file, path, from, to } = spot;
				const plain = texts.get(file)!;
				const text = windows ? `\uFEFF${plain.replace(/\n/g, '\r\n')}` : plain;
				const place = (at: number) => (windows ? 1 + at + plain.slice(0, at).split('\n').length - 1 : at);
				const edited = editContent(file, text, { fields: { [path]: wanted } });
				if (!edited.ok) throw new Error(`${file} ${path}`);
				const [head, tail] = [text.slice(0, place(from)), text.slice(place(to))];
				expect(edited.value.startsWith(head)).toBe(true);
				expect(edited.value.endsWith(tail)).toBe(true);
				// and back again to the same value leaves the rest alone too
				const same = editContent(file, edited.value, { fields: { [path]: wanted } });
				expect(same).toEqual({ ok: true, value: edited.value });
			}),
			{ numRuns: 200, seed: 20261201 },
		);
	});

	it('adds a line and takes it away again, byte for byte', () => {
		const specimens = [...texts.keys()].filter((file) => file.endsWith('specimen.yaml'));
		for (const file of specimens) {
			const text = texts.get(file)!;
			const added = editContent(file, text, { fields: { status: 'draft', 'show.from': '2026-12-01' } });
			if (!added.ok) throw new Error(file);
			expect(added.value).toMatch(/^status: draft$/m);
			expect(added.value).toMatch(/^show: \{ from: 2026-12-01 \}$/m);
			const removed = editContent(file, added.value, { fields: { status: null, 'show.from': null } });
			expect(removed).toEqual({ ok: true, value: text });
		}
	});

	it('changes the text of a label, and keeps what stands round it', () => {
		const text = '---\r\ntitle: A # note\r\n---\r\n\r\nOld words.\r\n\r\nMore.\r\n\r\n';
		const edited = editContent('specimens/a/label.en.md', text, {
			fields: { alt: 'A tooth: brown', 'features.edge': 'Edge' },
			body: 'New words.\n\nMore.',
		});
		expect(edited).toEqual({
			ok: true,
			value:
				'---\r\ntitle: A # note\r\nalt: "A tooth: brown"\r\nfeatures: { edge: Edge }\r\n---\r\n\r\nNew words.\r\n\r\nMore.\r\n\r\n',
		});
	});
});
