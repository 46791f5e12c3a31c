import { describe, expect, it } from 'vitest';
import type { DeskFile } from '../../../../src/lib/content/specimenDesk';
import { applyEdits } from '../../../../src/lib/server/specimenDesk/applyEdits';
import { readFacts, readLabelFields } from '../../../../src/lib/server/specimenDesk/readFields';

const FACTS = `# a note
accession: SKM 0001   # as on the box
group: mosasaurus
part: crown
preservation: tan
bed: upper-marl
identified:
  by: Skerrow Museum  # who says so
  certainty: likely
shape: { model: {} }
features:
  - { id: edge, at: 0.5, where: distal }
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [a-1, b-2]
`;
const LABEL = `---
title: A tooth # note
short: One line
features:
  edge: Edge
---

Seen **here**.
`;
const files: DeskFile[] = [
	{ path: 'specimens/skm-1/specimen.yaml', base: 'f', exact: FACTS },
	{ path: 'specimens/skm-1/label.en.md', base: 'l', exact: LABEL },
	{ path: 'specimens/skm-1/label.fr.md', base: null, exact: null },
];
const textOf = (edits: Parameters<typeof applyEdits>[1], path: string) => {
	const applied = applyEdits(files, edits);
	if (!applied.ok) throw new Error(applied.problem.path);
	const change = applied.value.find((one) => one.path.endsWith(path));
	return change && 'text' in change ? change.text : undefined;
};

describe('applyEdits', () => {
	it('changes only the lines that were typed', () => {
		const made = textOf(
			{ facts: { by: 'M. Anning', bed: '', status: 'draft', until: '2027-03-01' } },
			'specimen.yaml',
		);
		expect(made).toContain('  by: M. Anning  # who says so\n');
		expect(made).not.toContain('bed:');
		expect(made).toMatch(/^status: draft$/m);
		expect(readFacts(made!)?.fields).toMatchObject({
			until: '2027-03-01',
			status: 'draft',
			bed: '',
			by: 'M. Anning',
		});
		for (const line of ['# a note', 'accession: SKM 0001   # as on the box', 'sources: [a-1, b-2]'])
			expect(made).toContain(line);
	});

	it('adds and takes out sources', () => {
		expect(textOf({ facts: { sources: ['b-2', 'c-3'] } }, 'specimen.yaml')).toContain('sources: [b-2, c-3]');
	});

	it('changes words, names of places and the text of a label, and keeps its notes', () => {
		const made = textOf(
			{ labels: { en: { title: 'Look: a tooth', features: { edge: 'Sharp edge' }, text: 'New.\n\nText.' } } },
			'label.en.md',
		);
		expect(made).toContain('title: "Look: a tooth" # note\n');
		expect(readLabelFields(made!)).toEqual({
			title: 'Look: a tooth',
			short: 'One line',
			alt: '',
			text: 'New.\n\nText.',
			features: { edge: 'Sharp edge' },
		});
	});

	it('begins a label that is not there yet, names of places too', () => {
		const applied = applyEdits(files, {
			labels: { fr: { title: 'Une dent', short: 'Une ligne', features: { edge: 'Bord' }, text: 'Vu.' } },
		});
		expect(applied.ok && applied.value.map(({ path, base }) => [path, base])).toEqual([
			['specimens/skm-1/label.fr.md', null],
		]);
		const made = applied.ok && 'text' in applied.value[0] ? applied.value[0].text : null;
		expect(readLabelFields(made!)).toEqual({
			title: 'Une dent',
			short: 'Une ligne',
			alt: '',
			text: 'Vu.',
			features: { edge: 'Bord' },
		});
	});

	it('changes nothing where nothing else was typed, and gives up on what it cannot change safely', () => {
		expect(applyEdits(files, {})).toEqual({ ok: true, value: [] });
		expect(applyEdits(files, { facts: { group: 'mosasaurus' } })).toEqual({ ok: true, value: [] });
		const broken = [{ path: 'specimens/skm-1/specimen.yaml', base: 'f', exact: 'group: [unclosed' }];
		expect(applyEdits(broken, { facts: { group: 'x' } })).toEqual({
			ok: false,
			problem: { path: 'specimens/skm-1/specimen.yaml' },
		});
	});
});

describe('readFields', () => {
	it('reads what is there, and leaves empty what is not', () => {
		const facts = readFacts(FACTS);
		expect(facts?.features).toEqual(['edge']);
		expect(facts?.fields).toMatchObject({
			by: 'Skerrow Museum',
			sources: ['a-1', 'b-2'],
			status: '',
			from: '',
		});
		expect(readFacts('- a list')).toBeNull();
		expect(readLabelFields('no short lines')).toBeNull();
	});
});
