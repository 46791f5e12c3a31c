import { describe, expect, it } from 'vitest';
import { certainWords } from '../../../../src/lib/content/prose/certainWords';

const found = (sentence: string, language: string) =>
	certainWords(sentence, language).map(({ word }) => word);

describe('certainWords', () => {
	it.each([
		['en', 'The wear proves that it ate clams.', ['proves']],
		['en', 'It certainly cut flesh, without doubt.', ['certainly', 'without doubt']],
		['fr', 'L’usure prouve que l’animal mangeait des coquilles, à coup sûr.', ['prouve', 'à coup sûr']],
		['fr', 'Il mangeait certainement des poissons.', ['certainement']],
		['es', 'El desgaste demuestra que comía almejas, sin duda.', ['demuestra', 'sin duda']],
		['es', 'Esto prueba que cortaba carne.', ['prueba que']],
	])('%s: %s', (language, sentence, words) => {
		expect(found(sentence, language)).toEqual(words);
	});

	it.each([
		['en', 'This does not prove what it ate.'],
		['en', 'Nothing proves it, and it isn’t proven.'],
		['en', 'The wear may show improved cutting; provenance is unknown.'],
		['fr', 'Cela ne prouve pas ce qu’il mangeait.'],
		['fr', 'C’est sans doute un lézard.'], // "probably", for all its letters
		['es', 'Esto no demuestra qué comía.'],
		['es', 'Es una prueba de la mordida.'],
		['de', 'Das beweist es.'],
	])('%s leaves alone: %s', (language, sentence) => {
		expect(found(sentence, language)).toEqual([]);
	});

	it('tells where the word begins', () => {
		expect(certainWords('Wear proves it.', 'en')).toEqual([{ word: 'proves', offset: 5 }]);
	});
});
