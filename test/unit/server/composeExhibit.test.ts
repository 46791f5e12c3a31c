import { describe, expect, it } from 'vitest';
import type { ExhibitDraft } from '../../../src/lib/content/draft';
import type { Exhibit } from '../../../src/lib/content/exhibit';
import type { Problem } from '../../../src/lib/content/problem';
import { composeExhibit } from '../../../src/lib/server/composeExhibit';
import { exhibit, hashOf, prepared, specimen } from './samples';

const ready = () => prepared(hashOf('cone'));
const draftOf = (whole: Exhibit, changes: Partial<ExhibitDraft> = {}): ExhibitDraft => ({
	...whole,
	...changes,
});
const problem = (file: string, severity: Problem['severity'] = 'error'): Problem => ({
	id: 'unknown-key',
	severity,
	file,
	line: 1,
	column: 1,
	path: '',
	message: '',
	remedy: '',
});
const ids = (list: readonly { id: string }[]): string[] => list.map(({ id }) => id);

describe('composeExhibit', () => {
	it('takes a clean draft as it is, and gives equal content an equal hash', () => {
		const whole = exhibit();
		const made = composeExhibit(draftOf(whole), [], null, ready);
		expect(made).toEqual(whole);
		const other = composeExhibit(draftOf(whole, { museum: 'Another' }), [], null, ready);
		expect(other.hash).toMatch(/^[0-9a-f]{64}$/);
		expect(other.hash).not.toBe(made.hash);
	});

	it('keeps the last good version of a specimen with an error, in its place', () => {
		const last = exhibit({ specimens: ['a', 'b', 'c', 'd'].map((id) => specimen(id)) });
		const draft = draftOf(last, { specimens: [specimen('a'), specimen('c'), specimen('e')] });
		const made = composeExhibit(draft, [problem('specimens/b/label.en.md')], last, ready);
		expect(ids(made.specimens)).toEqual(['a', 'b', 'c', 'e']); // d was taken out without an error
		expect(made.specimens[1]).toBe(last.specimens[1]);
	});

	it('keeps a screen that is lost to an error, and lets one go that was taken out', () => {
		const screens = [
			{ id: 'wall', title: 'Wall' },
			{ id: 'table', title: 'Table' },
		];
		const last = exhibit({ screens });
		const draft = draftOf(last, { screens: [{ id: 'wall', title: 'New wall' }] });
		const names = (problems: Problem[]) =>
			composeExhibit(draft, problems, last, ready).screens?.map(({ title }) => title);
		expect(names([problem('screens.yaml')])).toEqual(['New wall', 'Table']);
		expect(names([])).toEqual(['New wall']);
	});

	it('leaves a specimen with an error out where there is no good version of it', () => {
		const draft = draftOf(exhibit(), { specimens: [specimen('a')] });
		expect(ids(composeExhibit(draft, [problem('specimens/b/specimen.yaml')], null, ready).specimens)).toEqual(
			['a'],
		);
	});

	it('does not hold a specimen for a warning', () => {
		const last = exhibit();
		const draft = draftOf(last, { specimens: [specimen('a')] });
		const made = composeExhibit(draft, [problem('specimens/b/label.en.md', 'warning')], last, ready);
		expect(ids(made.specimens)).toEqual(['a']);
	});

	it('shows the last version while a new shape is not prepared', () => {
		const last = exhibit();
		const edited = specimen('b', { accession: 'SKM 9999' });
		const draft = draftOf(last, { specimens: [specimen('a'), edited, specimen('new')] });
		const made = composeExhibit(draft, [], last, ({ id }) => (id === 'a' ? ready() : null));
		expect(ids(made.specimens)).toEqual(['a', 'b']);
		expect(made.specimens[1].accession).toBe('SKM b');
	});

	it('keeps a group with an error and the specimens that need it', () => {
		const last = exhibit();
		const draft = draftOf(last, { specimens: [], groups: [] });
		const made = composeExhibit(draft, [problem('groups/mosasaurus.en.md')], last, ready);
		expect(ids(made.groups)).toEqual(['mosasaurus']);
		expect(ids(made.specimens)).toEqual(['a', 'b']);
	});

	it('keeps group, bed and sources of a specimen that is held, though their files are gone', () => {
		const last = exhibit();
		const draft = draftOf(last, { specimens: [], groups: [], beds: [], sources: [] });
		const made = composeExhibit(draft, [problem('specimens/a/specimen.yaml')], last, ready);
		expect(ids(made.specimens)).toEqual(['a']);
		expect(ids(made.groups)).toEqual(['mosasaurus']);
		expect(ids(made.beds)).toEqual(['marl']);
		expect(ids(made.sources)).toEqual(['book']);
	});

	it('keeps the sources of a sources.yaml that cannot be read', () => {
		const last = exhibit();
		const draft = draftOf(last, {
			sources: [],
			specimens: [specimen('a', { sources: [] }), specimen('b', { sources: [] })],
		});
		const made = composeExhibit(draft, [problem('sources.yaml')], last, ready);
		expect(made.sources).toEqual(last.sources);
		expect(made.specimens[0].sources).toEqual(['book']);
	});

	it('keeps words of the screen and of the glossary that an error took away', () => {
		const last = exhibit({
			glossary: [
				{
					id: 'carina',
					text: { en: { term: 'Carina', meaning: 'An edge.' }, fr: { term: 'Carène', meaning: 'Un bord.' } },
				},
			],
		});
		const draft = draftOf(last, {
			ui: { en: { start: 'Begin' }, fr: {} },
			glossary: [{ id: 'carina', text: { en: { term: 'Carina', meaning: 'A sharp edge.' } } }],
		});
		const made = composeExhibit(draft, [problem('ui/fr.yaml'), problem('glossary/fr.yaml')], last, ready);
		expect(made.ui).toEqual({ en: { start: 'Begin' }, fr: { start: 'Commencer' } });
		expect(made.glossary[0].text).toEqual({
			en: { term: 'Carina', meaning: 'A sharp edge.' },
			fr: { term: 'Carène', meaning: 'Un bord.' },
		});
	});
});
