import { describe, expect, it } from 'vitest';
import type { FactFields } from '../../../src/lib/content/specimenDesk';
import { SpecimenForm, type SpecimenFields } from '../../../src/lib/ui/desk/specimenForm.svelte';

const FACTS: FactFields = {
	accession: 'SKM 1',
	group: 'g',
	part: 'crown',
	preservation: 'tan',
	bed: '',
	by: 'us',
	certainty: 'sure',
	licence: '',
	rightsHolder: '',
	sources: ['a'],
	status: '',
	from: '',
	until: '',
};
const fields = (title = 'A tooth'): SpecimenFields => ({
	files: [{ path: 'specimens/skm-1/label.en.md', base: title, exact: title }],
	facts: { ...FACTS },
	labels: { en: { title, short: 's', alt: '', text: 't', features: { edge: 'Edge' } } },
});

describe('SpecimenForm', () => {
	it('tells only what differs from the files', () => {
		const form = new SpecimenForm(fields());
		expect(form.changed).toBe(false);
		form.labels.en.title = 'Another';
		form.labels.en.features.edge = 'Rim';
		form.facts!.sources = ['a', 'b'];
		expect(form.request('en').edits).toEqual({
			facts: { sources: ['a', 'b'] },
			labels: { en: { title: 'Another', features: { edge: 'Rim' } } },
		});
		form.labels.en.title = 'A tooth';
		form.labels.en.features.edge = 'Edge';
		form.facts!.sources = ['a'];
		expect(form.changed).toBe(false);
	});

	it('keeps what was typed when the files change below it, and takes up the rest', () => {
		const form = new SpecimenForm(fields());
		form.labels.en.short = 'typed';
		form.load(fields('Changed outside'), true);
		expect(form.labels.en).toMatchObject({ title: 'Changed outside', short: 'typed' });
		expect(form.request('en')).toMatchObject({
			files: [{ base: 'Changed outside' }],
			edits: { labels: { en: { short: 'typed' } } },
		});
		// the very field in which somebody types: that is for the save to tell
		expect(form.overtaken({ ...fields('Other') })).toBe(false);
		form.labels.en.title = 'Typed too';
		expect(form.overtaken(fields('Other'))).toBe(true);
		// what was typed has been saved
		expect(form.overtaken(fields('Typed too'))).toBe(false);
		form.load(fields('Saved'), false);
		expect(form.changed).toBe(false);
		form.labels.en.short = 'again';
		form.discard();
		expect(form.labels.en.short).toBe('s');
	});
});
