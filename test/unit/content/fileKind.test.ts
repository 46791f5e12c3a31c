import { describe, expect, it } from 'vitest';
import { fileKind } from '../../../src/lib/content/fileKind';

describe('fileKind', () => {
	it.each([
		['exhibit.yaml', { kind: 'exhibit' }],
		['sources.yaml', { kind: 'sources' }],
		['ui/en.yaml', { kind: 'ui', language: 'en' }],
		['glossary/fr.yaml', { kind: 'glossary', language: 'fr' }],
		['beds/upper-marl.yaml', { kind: 'bed', id: 'upper-marl' }],
		['beds/upper-marl.es.md', { kind: 'text', of: 'bed', id: 'upper-marl', language: 'es' }],
		['groups/mosasaurus.yaml', { kind: 'group', id: 'mosasaurus' }],
		['groups/mosasaurus.en.md', { kind: 'text', of: 'group', id: 'mosasaurus', language: 'en' }],
		['specimens/skm-1/specimen.yaml', { kind: 'specimen', id: 'skm-1' }],
		['specimens/skm-1/label.en.md', { kind: 'text', of: 'specimen', id: 'skm-1', language: 'en' }],
		['specimens/skm-1/Tooth.STL', { kind: 'asset', id: 'skm-1', name: 'Tooth.STL' }],
		['specimens/skm-1/label.en.mp3', { kind: 'sound', id: 'skm-1', language: 'en' }],
		['specimens/skm-1/reading.mp3', { kind: 'stray', reason: 'unknown', meant: 'label.en.mp3' }],
		['feeding/materials.yaml', { kind: 'feeding', part: 'materials' }],
		['feeding/prey/bone.yaml', { kind: 'prey', id: 'bone' }],
		['feeding/jaws/sea-lizard.yaml', { kind: 'jaw', id: 'sea-lizard' }],
		['feeding/words/en.yaml', { kind: 'feeding-words', language: 'en' }],
		['feeding/guilds.yml', { kind: 'stray', reason: 'ending', found: '.yml', name: 'guilds.yaml' }],
		['feeding/prey/bone.txt', { kind: 'stray', reason: 'ending', found: '.txt', name: 'bone.yaml' }],
		['feeding/prey/Big Bone.yaml', { kind: 'stray', reason: 'bad-name', found: 'Big Bone' }],
		['feeding/teeth.yaml', { kind: 'stray', reason: 'unknown' }],
		['feeding/prey/old/bone.yaml', { kind: 'stray', reason: 'unknown' }],
		['replacement/animals.yaml', { kind: 'replacement', table: 'animals' }],
		['replacement/es.yaml', { kind: 'replacement-words', language: 'es' }],
		['replacement/jaws.yml', { kind: 'stray', reason: 'ending', found: '.yml', name: 'jaws.yaml' }],
		['replacement/animal.yaml', { kind: 'stray', reason: 'unknown', meant: 'animals.yaml' }],
		['replacement/notes.docx', { kind: 'stray', reason: 'unknown' }],
		['README.md', { kind: 'ignored' }],
		['specimens/skm-1/.DS_Store', { kind: 'ignored' }],
		['specimens/skm-1/Thumbs.db', { kind: 'ignored' }],
		['.git/HEAD', { kind: 'ignored' }],
		['exhibit.yml', { kind: 'stray', reason: 'ending', found: '.yml', name: 'exhibit.yaml' }],
		['ui/en.yml', { kind: 'stray', reason: 'ending', found: '.yml', name: 'en.yaml' }],
		[
			'beds/upper-marl.yaml.txt',
			{ kind: 'stray', reason: 'ending', found: '.yaml.txt', name: 'upper-marl.yaml' },
		],
		[
			'beds/upper-marl.en.markdown',
			{ kind: 'stray', reason: 'ending', found: '.en.markdown', name: 'upper-marl.en.md' },
		],
		['beds/Upper Marl.yaml', { kind: 'stray', reason: 'bad-name', found: 'Upper Marl' }],
		['groups/mosasaurus.md', { kind: 'stray', reason: 'no-language', name: 'mosasaurus.en.md' }],
		[
			'specimens/skm-1/label.en.txt',
			{ kind: 'stray', reason: 'ending', found: '.en.txt', name: 'label.en.md' },
		],
		['specimens/skm-1/label.md', { kind: 'stray', reason: 'no-language', name: 'label.en.md' }],
		['specimens/skm-1/labels.yaml', { kind: 'stray', reason: 'unknown', meant: 'specimen.yaml' }],
		['specimens/skm-1/old/specimen.yaml', { kind: 'stray', reason: 'unknown' }],
		['specimens/SKM 1/specimen.yaml', { kind: 'stray', reason: 'bad-name', found: 'SKM 1' }],
		['notes.docx', { kind: 'stray', reason: 'unknown' }],
	])('%s', (path, kind) => {
		expect(fileKind(path)).toEqual(kind);
	});
});
