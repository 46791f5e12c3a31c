import {
	compileBed,
	compileExhibit,
	compileGroup,
	type CompiledBed,
	type CompiledExhibit,
	type CompiledGroup,
} from './compileExhibit';
import { compileFeedingPart, compileJaw, compilePrey, type CompiledFeeding } from './compileFeeding';
import { compileFeedingWords } from './compileFeedingWords';
import { compileSpecimen, type CompiledSpecimen } from './compileSpecimen';
import { compileGlossary, compileSources, compileUi } from './compileTable';
import type { CompiledGlossary, CompiledSources, CompiledUi } from './compileTable';
import { compileText, type CompiledText } from './compileText';
import type { Drawing } from './exhibit';
import type { FeedingWords } from './feedingContent';
import type { FileKind } from './fileKind';
import { FILE_START, finding, type Finding, type Place } from './finding';
import { exampleFor } from './messages';
import { readDrawing } from './readDrawing';
import {
	compileQuizSettings,
	compileQuizTable,
	compileQuizWords,
	type CompiledQuizTable,
	type CompiledQuizWords,
	type QuizSettings,
} from './quiz/compileQuiz';
import {
	compileReplacementTable,
	compileReplacementWords,
	type CompiledEntryWords,
	type CompiledTable,
} from './replacement/compileReplacement';
import { readYaml, type Places } from './readYaml';
import { compileScreens, type CompiledScreens } from './screens/compileScreens';

/** One file, read and checked by itself: the result rests on nothing but its text and its path. */
export interface CompiledFile {
	findings: Finding[];
	places: Places;
	exhibit?: CompiledExhibit | null;
	sources?: CompiledSources;
	screens?: CompiledScreens;
	ui?: CompiledUi;
	glossary?: CompiledGlossary;
	bed?: CompiledBed | null;
	group?: CompiledGroup;
	specimen?: CompiledSpecimen;
	text?: CompiledText;
	replacement?: CompiledTable;
	replacementWords?: CompiledEntryWords;
	/** a file of the folder `feeding/` */
	feeding?: CompiledFeeding;
	/** null when it cannot be used */
	feedingWords?: FeedingWords | null;
	quizSettings?: QuizSettings | null;
	quizTable?: CompiledQuizTable;
	quizWords?: CompiledQuizWords;
	/** null when it cannot be used */
	drawing?: Drawing | null;
}

const MOST_FINDINGS = 50;

const EXAMPLE_OF: Readonly<Record<string, string>> = {
	exhibit: exampleFor('museum'),
	sources: 'leidy-1865: { citation: "Leidy, J. 1865.", tag: seen }',
	screens: 'gallery-wall: { title: Gallery wall }',
	ui: 'start_title: What can a tooth tell?',
	glossary: 'carina: { term: Carina, meaning: A sharp cutting edge. }',
	bed: exampleFor('oldest_ma'),
	group: exampleFor('latin'),
	specimen: exampleFor('accession'),
	replacement: 'skerrow-lizard: { positions: { from: 60, source: recalled } }',
	'replacement-words': 'stages: { germ: { name: Germ, line: A soft bud } }',
	'quiz-settings': 'off: [caliper]',
	quiz: 'year-four: { band: 7-11, length: 10, seed: 4712 }',
	'quiz-words': 'rounds: { year-four: { name: Year 4 } }',
	text: '---',
	feeding: 'skin: { resists_mpa: { value: 20, source: recalled, tag: memory } }',
	prey: 'outline: fish',
	jaw: 'teeth: 18',
	'feeding-words': 'corners: { pierce: { name: Pierce, shape: Needle, does: Holds slippery fish } }',
	drawing: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 200">',
};

/** Reads and checks one text file; never throws. */
export function compileFile(kind: FileKind, text: string): CompiledFile {
	try {
		const compiled = compile(kind, text);
		return { ...compiled, findings: capped(compiled.findings) };
	} catch (cause) {
		const reason = cause instanceof Error ? cause.message : String(cause);
		return failed(finding('not-understood', FILE_START, '', { reason }));
	}
}

export const failed = (found: Finding): CompiledFile => ({ findings: [found], places: new Map() });

function compile(kind: FileKind, raw: string): CompiledFile {
	const text = raw.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
	const strange = notText(text);
	if (strange) return failed(strange);
	const example = EXAMPLE_OF[kind.kind];
	if (text.trim() === '') return failed(finding('empty-file', FILE_START, '', { example }));
	if (kind.kind === 'text') {
		const { compiled, findings } = compileText(text, kind.of, kind.language);
		return { findings, places: compiled.places, text: compiled };
	}
	if (kind.kind === 'drawing') return { ...readDrawing(text), places: new Map() };
	const words = kind.kind === 'ui' || kind.kind === 'glossary' || kind.kind.endsWith('-words');
	const yaml = readYaml(text, { wordsForVisitors: words });
	const { places, value } = yaml;
	if (value === undefined) return { findings: yaml.findings, places };
	if (value === null) return failed(finding('empty-file', FILE_START, '', { example }));
	if (typeof value !== 'object' || Array.isArray(value)) {
		const place = places.get('')?.value ?? FILE_START;
		return failed(finding('not-fields', place, '', { path: '', example }));
	}
	const first = yaml.findings;
	const with_ = <T>(result: { compiled: T; findings: Finding[] }) => ({
		compiled: result.compiled,
		findings: [...first, ...result.findings],
	});
	switch (kind.kind) {
		case 'exhibit': {
			const { compiled, findings } = with_(compileExhibit(yaml));
			return { findings, places, exhibit: compiled };
		}
		case 'sources': {
			const { compiled, findings } = with_(compileSources(yaml));
			return { findings, places, sources: compiled };
		}
		case 'screens': {
			const { compiled, findings } = with_(compileScreens(yaml));
			return { findings, places, screens: compiled };
		}
		case 'ui': {
			const { compiled, findings } = with_(compileUi(yaml));
			return { findings, places, ui: compiled };
		}
		case 'glossary': {
			const { compiled, findings } = with_(compileGlossary(yaml));
			return { findings, places, glossary: compiled };
		}
		case 'replacement': {
			const { compiled, findings } = with_(compileReplacementTable(kind.table, yaml));
			return { findings, places, replacement: compiled };
		}
		case 'replacement-words': {
			const { compiled, findings } = with_(compileReplacementWords(yaml));
			return { findings, places, replacementWords: compiled };
		}
		case 'quiz-settings': {
			const { compiled, findings } = with_(compileQuizSettings(yaml));
			return { findings, places, quizSettings: compiled };
		}
		case 'quiz': {
			const { compiled, findings } = with_(compileQuizTable(kind.table, yaml));
			return { findings, places, quizTable: compiled };
		}
		case 'quiz-words': {
			const { compiled, findings } = with_(compileQuizWords(yaml));
			return { findings, places, quizWords: compiled };
		}
		case 'bed': {
			const { compiled, findings } = with_(compileBed(yaml));
			return { findings, places, bed: usable(first) ? compiled : null };
		}
		case 'group': {
			const { compiled, findings } = with_(compileGroup(yaml));
			return { findings, places, group: usable(first) ? compiled : { ...compiled, facts: undefined } };
		}
		case 'specimen': {
			const { compiled, findings } = with_(compileSpecimen(yaml));
			return { findings, places, specimen: usable(first) ? compiled : { ...compiled, facts: undefined } };
		}
		case 'feeding': {
			const { compiled, findings } = with_(compileFeedingPart(kind.part, yaml));
			return { findings, places, feeding: usable(first) ? compiled : {} };
		}
		case 'prey': {
			const { compiled, findings } = with_(compilePrey(yaml));
			return { findings, places, feeding: usable(first) ? compiled : {} };
		}
		case 'jaw': {
			const { compiled, findings } = with_(compileJaw(yaml));
			return { findings, places, feeding: usable(first) ? compiled : {} };
		}
		case 'feeding-words': {
			const { compiled, findings } = with_(compileFeedingWords(yaml));
			return { findings, places, feedingWords: compiled };
		}
		default:
			return { findings: [], places: new Map() };
	}
}

const usable = (findings: Finding[]) => findings.every(({ severity }) => severity !== 'error');

/** The first sign that no text file holds: a wrong encoding, or no text at all. */
function notText(text: string): Finding | null {
	const control = text.search(/[\u0000-\u0008\u000B\u000C\u000E-\u001F]/);
	if (control >= 0) return finding('not-text', placeIn(text, control), '', null);
	const lost = text.indexOf('\uFFFD');
	return lost < 0 ? null : finding('not-utf8', placeIn(text, lost), '', null);
}

function placeIn(text: string, offset: number): Place {
	const before = text.slice(0, offset).split('\n');
	return { line: before.length, column: before[before.length - 1].length + 1 };
}

function capped(findings: Finding[]): Finding[] {
	if (findings.length <= MOST_FINDINGS) return findings;
	const sorted = [...findings].sort((a, b) => a.line - b.line || a.column - b.column);
	const next = sorted[MOST_FINDINGS];
	const left = findings.length - MOST_FINDINGS;
	const serious = sorted.slice(MOST_FINDINGS).some(({ severity }) => severity === 'error');
	const more = finding('too-many-problems', next, '', { left });
	return [...sorted.slice(0, MOST_FINDINGS), serious ? more : { ...more, severity: 'warning' }];
}
