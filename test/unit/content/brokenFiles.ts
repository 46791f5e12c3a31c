import { S1, S2, L1, F1, type BrokenCase } from './brokenContent';
import { edited, VALID_CONTENT } from './validContent';

/** Files that are missing, misnamed or not text. */
export const brokenFiles: BrokenCase[] = [
	{
		name: 'a label without its lines of hyphens',
		overlay: { [L1]: 'title: Crown\n' },
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:1:1`,
				id: 'no-top-lines',
				severity: 'error',
				path: '',
				message: 'The file does not begin with a line of three hyphens (---).',
				remedy:
					'Begin the file with ---, then the short lines (title: Sea-lizard crown with two edges), then --- again, then the text.',
			},
		],
	},
	{
		name: 'a label whose second line of hyphens is missing',
		overlay: edited(L1, '  edge: Cutting edge\n---', '  edge: Cutting edge'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:1:1`,
				id: 'top-lines-not-closed',
				severity: 'error',
				path: '',
				message: 'The second line of three hyphens (---) is missing.',
				remedy: 'Put --- on a line of its own between the short lines and the text.',
			},
		],
	},
	{
		name: 'a recording in a language that the exhibit does not show, and one whose name says nothing',
		overlay: { 'specimens/skm-0001/label.de.mp3': 'ID3', 'specimens/skm-0001/Reading 1.mp3': 'ID3' },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'specimens/skm-0001/Reading 1.mp3:1:1',
				id: 'unknown-file',
				severity: 'warning',
				path: '',
				message: 'The exhibit does not use this file. Did you mean label.en.mp3?',
				remedy: 'Rename it to label.en.mp3, or move it out of the content folder.',
			},
			{
				at: 'specimens/skm-0001/label.de.mp3:1:1',
				id: 'language-not-shown',
				severity: 'warning',
				path: '',
				message:
					'This file is in "de", a language that the exhibit does not show. exhibit.yaml lists en and fr.',
				remedy:
					'To show it, add a line under languages in exhibit.yaml: - { code: de, name: (its own name) }',
			},
		],
	},
	{
		name: 'an empty file',
		overlay: { [L1]: '' },
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:1:1`,
				id: 'empty-file',
				severity: 'error',
				path: '',
				message: 'The file is empty.',
				remedy: 'Fill it in, or delete it. It begins like this: ---',
			},
		],
	},
	{
		name: 'a file of notes only',
		overlay: { [S1]: '# nothing yet\n' },
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:1:1`,
				id: 'empty-file',
				severity: 'error',
				path: '',
				message: 'The file is empty.',
				remedy: 'Fill it in, or delete it. It begins like this: accession: SKM 0104',
			},
		],
	},
	{
		name: 'a file in another encoding',
		overlay: edited(F1, 'Couronne à arête', 'Couronne \uFFFD ar\uFFFDte'),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${F1}:2:17`,
				id: 'not-utf8',
				severity: 'error',
				path: '',
				message: 'The file is not saved as UTF-8, so letters such as é or ñ cannot be read.',
				remedy: 'Save it again with the encoding UTF-8 (in Notepad: Save as, Encoding: UTF-8).',
			},
		],
	},
	{
		name: 'a file that is not text',
		overlay: { [S1]: 'PK\u0003\u0004' },
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:1:3`,
				id: 'not-text',
				severity: 'error',
				path: '',
				message: 'The file holds signs that are not text.',
				remedy: 'Open it in a text editor, and save it as plain text with the encoding UTF-8.',
			},
		],
	},
	{
		name: 'a missing translation',
		overlay: { [F1]: null },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${F1}:1:1`,
				id: 'missing-translation',
				severity: 'warning',
				path: '',
				message:
					'There is no usable Français text here; visitors who read Français see the English text instead.',
				remedy: 'Copy specimens/skm-0001/label.en.md to this name and translate it.',
			},
		],
	},
	{
		name: 'no label in the first language',
		overlay: { [L1]: null },
		shows: ['skm-0002'],
		problems: [
			{
				at: `${L1}:1:1`,
				id: 'missing-text',
				severity: 'error',
				path: '',
				message:
					'The specimen skm-0001 has no usable text in the first language (English), so it is left out of the exhibit.',
				remedy: 'Write specimens/skm-0001/label.en.md; copy the same file of another one to begin with.',
			},
		],
	},
	{
		name: 'a language code of three letters in a name',
		overlay: { [F1]: null, 'specimens/skm-0001/label.fra.md': VALID_CONTENT[F1] },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'specimens/skm-0001/label.fra.md:1:1',
				id: 'wrong-language-code',
				severity: 'error',
				path: '',
				message: '"fra" is not a language of this exhibit. exhibit.yaml lists en and fr.',
				remedy: 'Rename the file to label.fr.md',
			},
		],
	},
	{
		name: 'a country in a language code',
		overlay: { [F1]: null, 'specimens/skm-0001/label.fr-FR.md': VALID_CONTENT[F1] },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'specimens/skm-0001/label.fr-FR.md:1:1',
				id: 'wrong-language-code',
				severity: 'error',
				path: '',
				message: '"fr-FR" is not a language of this exhibit. exhibit.yaml lists en and fr.',
				remedy: 'Rename the file to label.fr.md',
			},
		],
	},
	{
		name: 'a language that is not shown',
		overlay: { 'specimens/skm-0001/label.de.md': VALID_CONTENT[F1] },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'specimens/skm-0001/label.de.md:1:1',
				id: 'language-not-shown',
				severity: 'warning',
				path: '',
				message:
					'This file is in "de", a language that the exhibit does not show. exhibit.yaml lists en and fr.',
				remedy:
					'To show it, add a line under languages in exhibit.yaml: - { code: de, name: (its own name) }',
			},
		],
	},
	{
		name: 'a wrong ending',
		overlay: { [S2]: null, 'specimens/skm-0002/specimen.yml': VALID_CONTENT[S2] },
		shows: ['skm-0001'],
		problems: [
			{
				at: 'specimens/skm-0002/specimen.yml:1:1',
				id: 'wrong-ending',
				severity: 'error',
				path: '',
				message: 'The name ends in .yml, so the file is not used.',
				remedy: 'Rename it to specimen.yaml',
			},
		],
	},
	{
		name: 'a label without its language',
		overlay: { [L1]: null, 'specimens/skm-0001/label.md': VALID_CONTENT[L1] },
		shows: ['skm-0002'],
		problems: [
			{
				at: 'specimens/skm-0001/label.md:1:1',
				id: 'no-language-code',
				severity: 'error',
				path: '',
				message: 'The name does not say which language this is.',
				remedy: 'Put the language before the ending: label.en.md',
			},
		],
	},
	{
		name: 'a folder with a space in its name',
		overlay: { 'specimens/SKM 0003/specimen.yaml': VALID_CONTENT[S2] },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'specimens/SKM 0003/specimen.yaml:1:1',
				id: 'bad-name',
				severity: 'error',
				path: '',
				message:
					'"SKM 0003" cannot be a name here: names have small letters a to z, digits and single hyphens only.',
				remedy: 'Rename it, for example to skm-0003',
			},
		],
	},
	{
		name: 'a file that nothing uses',
		overlay: { 'specimens/skm-0001/notes.docx': 'x' },
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'specimens/skm-0001/notes.docx:1:1',
				id: 'unknown-file',
				severity: 'warning',
				path: '',
				message: 'The exhibit does not use this file.',
				remedy: 'Move it out of the content folder, or check its name and folder.',
			},
		],
	},
];
