import { describe, expect, it } from 'vitest';
import { PARTS } from '../../../src/lib/content/exhibit';
import type { ReplacementContent } from '../../../src/lib/content/replacement/types';
import { composeExhibit } from '../../../src/lib/server/composeExhibit';
import { viewReplacement } from '../../../src/lib/server/viewReplacement';
import { exhibit, specimen } from './samples';

const number = (from: number, tag: 'seen' | 'memory' = 'seen') => ({ from, to: from, source: 'book', tag });
const content: ReplacementContent = {
	animals: [
		{
			id: 'gator',
			kind: 'crocodilian',
			living: true,
			period_d: number(110),
			age: { kind: 'lines', days: number(300, 'memory') },
			sources: [],
			text: {
				en: { name: 'Alligator', line: 'It swims' },
				fr: { name: 'Alligator', line: 'Il nage', more: 'Bien.' },
			},
		},
	],
	stages: [],
	arrangements: [],
	jaws: [
		{
			id: 'uneven',
			positions: 3,
			spacing: [1, 2],
			period_d: 90,
			sources: ['book'],
			text: { en: { name: 'Uneven', line: 'A jaw' } },
		},
	],
	slices: [],
	counts: [],
	mysteries: [],
	wear: [],
};

describe('viewReplacement', () => {
	it('gives words in the language asked for, and says which language they are in', () => {
		const view = viewReplacement(exhibit({ replacement: content }), 'fr')!;
		expect(view.animals[0]).toMatchObject({ line: 'Il nage', more: 'Bien.', textLang: 'fr' });
		expect(view.jaws[0]).toMatchObject({ name: 'Uneven', more: null, textLang: 'en' });
	});

	it('marks numbers that are less sure than seen, and cites their source', () => {
		const view = viewReplacement(exhibit({ replacement: content }), 'en')!;
		const source = { citation: 'A book, 1865.', tag: 'seen' };
		expect(view.animals[0].period_d).toEqual({ from: 110, to: 110, mark: null, source });
		expect(view.animals[0].age).toEqual({
			kind: 'lines',
			days: { from: 300, to: 300, mark: 'memory', source },
		});
		expect(view.animals[0].sourceCitations).toEqual([source]);
		expect(view.jaws[0]).toMatchObject({
			positions: 3,
			spacing: [1, 2],
			period_d: 90,
			sourceCitations: [source],
		});
		expect(view.animals[0]).not.toHaveProperty('text');
	});

	it('counts the drawer from the specimens, every part once', () => {
		const specimens = [
			specimen('a', { part: 'shed-crown' }),
			specimen('b', { part: 'shed-crown' }),
			specimen('c', { part: 'germ' }),
		];
		const { drawer } = viewReplacement(exhibit({ replacement: content, specimens }), 'en')!;
		expect(drawer.map(({ part }) => part)).toEqual([...PARTS]);
		expect(Object.fromEntries(drawer.map(({ part, count }) => [part, count]))).toEqual({
			crown: 0,
			'shed-crown': 2,
			'rooted-tooth': 0,
			germ: 1,
			'jaw-piece': 0,
		});
		expect(drawer[1].teeth[0]).toMatchObject({ id: 'a', title: 'Tooth a' });
		expect(drawer[1].teeth[0].pictureUrl).toContain('/pictures/');
	});

	it('is null where the exhibit has no such content', () => {
		expect(viewReplacement(exhibit(), 'en')).toBeNull();
	});
});

describe('composeExhibit with replacement tables', () => {
	const last = exhibit({ replacement: content });
	const { hash: _hash, specimens: _specimens, replacement: _replacement, ...rest } = last;
	const draft = { ...rest, specimens: [], sources: [] };
	const emptied: ReplacementContent = { ...content, animals: [] };
	const problem = (file: string) => [
		{ id: 'x', severity: 'error' as const, file, line: 1, column: 1, path: '', message: '', remedy: '' },
	];

	it('keeps the last good version of an entry that is lost to an error, with its source', () => {
		const kept = composeExhibit(
			{ ...draft, replacement: emptied },
			problem('replacement/animals.yaml'),
			last,
			() => null,
		);
		expect(kept.replacement!.animals).toEqual(content.animals);
		expect(kept.sources.map(({ id }) => id)).toContain('book');
	});

	it('lets go what was taken out without an error', () => {
		const gone = composeExhibit({ ...draft, replacement: emptied }, [], last, () => null);
		expect(gone.replacement!.animals).toEqual([]);
		expect(composeExhibit(draft, [], last, () => null).replacement).toBeUndefined();
	});
});
