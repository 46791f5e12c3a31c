import { describe, expect, it } from 'vitest';
import type { Exhibit } from '../../../src/lib/content/exhibit';
import { borrowedWords } from '../../../src/lib/server/borrowedWords';
import { languageGaps } from '../../../src/lib/server/languageGaps';
import { exhibit, specimen } from './samples';

const withGerman = (over: Partial<Exhibit> = {}): Exhibit => {
	const base = exhibit();
	return {
		...base,
		languages: [
			{ code: 'en', name: 'English' },
			{ code: 'de', name: 'Deutsch' },
		],
		...over,
	};
};

describe('languageGaps', () => {
	it('names every line of the first language, with its file, when nothing is there', () => {
		const gaps = languageGaps(withGerman(), 'de');
		const label = gaps.find(({ file }) => file === 'specimens/a/label.de.md')!;
		expect(label.missing).toContainEqual({ key: 'title', words: 'Tooth a' });
		expect(label.missing).toContainEqual({ key: 'features.edge', words: 'Edge' });
		expect(label.lines).toBe(label.missing.length);
		expect(gaps[0].file).toBe('ui/de.yaml');
		// made from the same words
		expect(JSON.stringify(gaps)).not.toContain('<p>');
	});

	it('names single lines of files that are half done', () => {
		const a = specimen('a');
		const { features: _none, ...words } = a.text.en;
		const de = { ...words, title: 'Zahn a', features: {} };
		const gaps = languageGaps(
			withGerman({
				specimens: [{ ...a, text: { ...a.text, de } }],
				ui: { en: { x: 'One', y: 'Two' }, de: { x: 'Eins' } },
			}),
			'de',
		);
		expect(gaps.find(({ file }) => file === 'specimens/a/label.de.md')!.missing).toEqual([
			{ key: 'features.edge', words: 'Edge' },
		]);
		expect(gaps[0]).toEqual({ file: 'ui/de.yaml', lines: 2, missing: [{ key: 'y', words: 'Two' }] });
	});

	it('asks for a recording only where the first language has one', () => {
		const a = specimen('a');
		const gaps = (sound?: string) =>
			languageGaps(
				withGerman({ specimens: [{ ...a, text: { en: { ...a.text.en, ...(sound ? { sound } : {}) } } }] }),
				'de',
			);
		expect(gaps('1').map(({ file }) => file)).toContain('specimens/a/label.de.mp3');
		expect(gaps().map(({ file }) => file)).not.toContain('specimens/a/label.de.mp3');
	});

	it('finds nothing missing in the first language itself', () => {
		expect(languageGaps(withGerman(), 'en').flatMap(({ missing }) => missing)).toEqual([]);
	});
});

describe('borrowedWords', () => {
	it('is null for the first language and for one that is complete', () => {
		expect(borrowedWords(withGerman(), 'en')).toBeNull();
		const whole = withGerman();
		const twice = JSON.parse(JSON.stringify(whole), (_key, value: unknown) =>
			typeof value === 'object' && value !== null && 'en' in value ? { ...value, de: value.en } : value,
		) as Exhibit;
		expect(borrowedWords(twice, 'de')).toBeNull();
	});
	it('names keys and words, each once, and keeps them for the exhibit', () => {
		const now = withGerman({ ui: { en: { x: 'One', y: 'One' }, de: {} } });
		const borrowed = borrowedWords(now, 'de')!;
		expect(borrowed.lang).toBe('en');
		expect(borrowed.keys).toEqual(['x', 'y']);
		expect(borrowed.words.filter((words) => words === 'One')).toHaveLength(1);
		expect(borrowedWords(now, 'de')).toBe(borrowed);
	});
});
