import { describe, expect, it } from 'vitest';
import { parseNewSpecimen } from '../../../src/lib/server/newSpecimen/parseNewSpecimen';
import { NewForm } from '../../../src/lib/ui/desk/new/newForm.svelte';

const made = () => new NewForm(() => ['skm-0104'], 'Skerrow Museum');

describe('NewForm', () => {
	it('names the folder after the number, until somebody names it otherwise', () => {
		const form = made();
		expect(form.idTrouble).toBe('empty');
		form.accession = 'SKM 0104';
		expect(form.id).toBe('skm-0104');
		expect(form.idTrouble).toBe('taken');
		form.id = 'Other Name';
		expect(form.idTrouble).toBe('letters');
		form.id = 'other-name';
		form.accession = 'SKM 0105';
		expect([form.id, form.idTrouble]).toEqual(['other-name', null]);
		form.id = '';
		expect(form.id).toBe('skm-0105');
	});

	it('tells what is lacking in the order of the page, and then makes what the server takes', () => {
		const form = made();
		expect(form.typed).toBe(false);
		expect(form.lacks).toEqual([
			'accession',
			'id',
			'group',
			'part',
			'preservation',
			'certainty',
			'title',
			'short',
			'scan',
			'licence',
		]);
		form.accession = ' SKM 0300 ';
		form.group = 'mosasaurus';
		form.part = 'crown';
		form.preservation = 'tan';
		form.certainty = 'sure';
		form.title = 'A crown ';
		form.short = 'New';
		form.licence = 'http://creativecommons.org/licenses/by/4.0/';
		form.upload = 'a'.repeat(32);
		expect(form.lacks).toEqual(['units']);
		form.units = 'mm';
		expect(form.lacks).toEqual([]);
		expect(parseNewSpecimen(form.request())).toMatchObject({
			id: 'skm-0300',
			accession: 'SKM 0300',
			title: 'A crown',
			by: 'Skerrow Museum',
			shape: { kind: 'scan', units: 'mm', crownHeight_mm: null },
		});
		form.kind = 'model';
		expect(form.lacks).toEqual(['like']);
		form.like = 'skm-0104';
		form.crownHeight = 30;
		form.baseLength = 0;
		form.baseWidth = 12;
		expect(form.lacks).toEqual(['size']);
		form.baseLength = 15;
		expect(form.lacks).toEqual([]);
		expect(parseNewSpecimen(form.request())?.shape).toEqual({
			kind: 'model',
			like: 'skm-0104',
			crownHeight_mm: 30,
			baseLength_mm: 15,
			baseWidth_mm: 12,
		});
	});
});
