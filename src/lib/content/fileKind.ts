import { QUIZ_TABLES, type QuizTable } from './quiz/types';
import { REPLACEMENT_TABLES, type ReplacementTable } from './replacement/types';
import { ID_PATTERN } from './schemas';
import { suggest } from './suggest';

export type TextOf = 'bed' | 'group' | 'specimen';

/** What a file of the content folder is, by its path alone. */
export type FileKind =
	| { kind: 'exhibit' }
	| { kind: 'sources' }
	| { kind: 'screens' }
	| { kind: 'ui' | 'glossary'; language: string }
	| { kind: 'bed' | 'group' | 'specimen'; id: string }
	| { kind: 'replacement'; table: ReplacementTable }
	/** words of the replacement tables in one language */
	| { kind: 'replacement-words'; language: string }
	| { kind: 'quiz-settings' }
	| { kind: 'quiz'; table: QuizTable }
	/** words of the quiz tables in one language */
	| { kind: 'quiz-words'; language: string }
	| { kind: 'text'; of: TextOf; id: string; language: string }
	/** a table of the folder `feeding/` */
	| { kind: 'feeding'; part: FeedingPart }
	| { kind: 'prey' | 'jaw'; id: string }
	/** all words of the folder `feeding/` in a language */
	| { kind: 'feeding-words'; language: string }
	/** outline of a group's animal */
	| { kind: 'drawing'; id: string }
	/** a label read aloud: looked at by name only */
	| { kind: 'sound'; id: string; language: string }
	/** scans: looked at by name only */
	| { kind: 'asset'; id: string; name: string }
	/** read-me files and what systems leave behind */
	| { kind: 'ignored' }
	| { kind: 'stray'; reason: 'unknown'; meant?: string }
	| { kind: 'stray'; reason: 'ending'; found: string; name: string }
	| { kind: 'stray'; reason: 'no-language'; name: string }
	| { kind: 'stray'; reason: 'bad-name'; found: string };

export const FEEDING_PARTS = ['thresholds', 'crown', 'materials', 'guilds', 'ridges', 'everyday'] as const;
export type FeedingPart = (typeof FEEDING_PARTS)[number];
const FEEDING_FOLDERS: Readonly<Record<string, 'prey' | 'jaw'>> = { prey: 'prey', jaws: 'jaw' };

export const SCAN_ENDING = /\.(glb|stl|ply|obj)$/i;
/** Folders for curators: what to copy, and pictures of content/README.md. */
export const NOT_SHOWN: readonly string[] = ['templates', 'help'];
const FOLDER_OF: Readonly<Record<string, 'bed' | 'group'>> = { beds: 'bed', groups: 'group' };
const TOP_FILES: Readonly<Record<string, 'exhibit' | 'sources' | 'screens'>> = {
	'exhibit.yaml': 'exhibit',
	'sources.yaml': 'sources',
	'screens.yaml': 'screens',
};

export function fileKind(path: string): FileKind {
	const steps = path.split('/');
	const name = steps[steps.length - 1];
	if (steps.some((step) => step.startsWith('.') || step.startsWith('~') || step.endsWith('~')))
		return { kind: 'ignored' };
	if (steps.length > 1 && NOT_SHOWN.includes(steps[0])) return { kind: 'ignored' };
	if (/^(readme|licen[cs]e|notice|thumbs\.db|desktop\.ini)/i.test(name)) return { kind: 'ignored' };

	if (steps.length === 1) {
		const kind = TOP_FILES[name];
		if (kind) return { kind };
		const meant = Object.keys(TOP_FILES).find(
			(known) => known.split('.')[0] === name.split('.')[0].toLowerCase(),
		);
		return meant ? ending(name, meant) : { kind: 'stray', reason: 'unknown' };
	}
	const folder = steps[0];
	if (steps.length === 2 && (folder === 'ui' || folder === 'glossary')) {
		const match = /^([^.]+)\.yaml$/.exec(name);
		if (match) return { kind: folder, language: match[1] };
		return /\.(ya?ml|txt)$/i.test(name)
			? ending(name, `${name.split('.')[0]}.yaml`)
			: { kind: 'stray', reason: 'unknown' };
	}
	if (steps.length === 2 && folder === 'replacement') return replacementFile(name);
	if (steps.length === 2 && folder === 'quiz') return quizFile(name);
	if (steps.length === 2 && FOLDER_OF[folder]) return itemFile(FOLDER_OF[folder], name);
	if (folder === 'feeding') return feedingFile(steps.slice(1));
	if (steps.length === 3 && folder === 'specimens') return specimenFile(steps[1], name);
	return { kind: 'stray', reason: 'unknown' };
}

function replacementFile(name: string): FileKind {
	const [stem, ...rest] = name.split('.');
	const table = REPLACEMENT_TABLES.find((known) => known === stem.toLowerCase());
	if (rest.join('.') !== 'yaml') {
		if (!/^(ya?ml(\.txt)?|txt)$/i.test(rest.join('.'))) return { kind: 'stray', reason: 'unknown' };
		return ending(name, `${stem}.yaml`);
	}
	if (table && table === stem) return { kind: 'replacement', table };
	if (/^[a-z]{2,3}$/i.test(stem)) return { kind: 'replacement-words', language: stem };
	const meant = table ?? suggest(stem, REPLACEMENT_TABLES);
	return { kind: 'stray', reason: 'unknown', ...(meant ? { meant: `${meant}.yaml` } : {}) };
}

function feedingFile(steps: string[]): FileKind {
	const name = steps[steps.length - 1];
	const match = /^([^.]+)\.yaml$/.exec(name);
	const wrong = (): FileKind =>
		/\.(ya?ml|txt)$/i.test(name)
			? ending(name, `${name.split('.')[0]}.yaml`)
			: { kind: 'stray', reason: 'unknown' };
	if (steps.length === 1) {
		const part = FEEDING_PARTS.find((known) => known === name.split('.')[0].toLowerCase());
		if (part) return match?.[1] === part ? { kind: 'feeding', part } : ending(name, `${part}.yaml`);
		return { kind: 'stray', reason: 'unknown' };
	}
	if (steps.length > 2) return { kind: 'stray', reason: 'unknown' };
	if (steps[0] === 'words') return match ? { kind: 'feeding-words', language: match[1] } : wrong();
	const of = FEEDING_FOLDERS[steps[0]];
	if (!of) return { kind: 'stray', reason: 'unknown' };
	if (!match) return wrong();
	return ID_PATTERN.test(match[1])
		? { kind: of, id: match[1] }
		: { kind: 'stray', reason: 'bad-name', found: match[1] };
}

function quizFile(name: string): FileKind {
	const [stem, ...rest] = name.split('.');
	if (rest.join('.') !== 'yaml') {
		if (!/^(ya?ml(\.txt)?|txt)$/i.test(rest.join('.'))) return { kind: 'stray', reason: 'unknown' };
		return ending(name, `${stem}.yaml`);
	}
	const table = QUIZ_TABLES.find((known) => known === stem);
	if (table) return { kind: 'quiz', table };
	if (stem === 'settings') return { kind: 'quiz-settings' };
	if (/^[a-z]{2,3}$/i.test(stem)) return { kind: 'quiz-words', language: stem };
	const meant = suggest(stem.toLowerCase(), [...QUIZ_TABLES, 'settings']);
	return { kind: 'stray', reason: 'unknown', ...(meant ? { meant: `${meant}.yaml` } : {}) };
}

function itemFile(of: 'bed' | 'group', name: string): FileKind {
	const [id, ...rest] = name.split('.');
	const tail = rest.join('.');
	if (tail === 'yaml')
		return ID_PATTERN.test(id) ? { kind: of, id } : { kind: 'stray', reason: 'bad-name', found: id };
	if (of === 'group' && tail === 'svg')
		return ID_PATTERN.test(id) ? { kind: 'drawing', id } : { kind: 'stray', reason: 'bad-name', found: id };
	if (of === 'group' && /^svgz?$|^svg\.(txt|xml)$/i.test(tail)) return ending(name, `${id}.svg`);
	if (rest.length === 2 && rest[1] === 'md') return { kind: 'text', of, id, language: rest[0] };
	if (tail === 'md') return { kind: 'stray', reason: 'no-language', name: `${id}.en.md` };
	if (/^ya?ml(\.txt)?$|^txt$/i.test(tail)) return ending(name, `${id}.yaml`);
	if (rest.length >= 2 && /^(markdown|txt|md)$/i.test(rest[rest.length - 1]))
		return ending(name, `${id}.${rest[0]}.md`);
	return { kind: 'stray', reason: 'unknown' };
}

function specimenFile(id: string, name: string): FileKind {
	if (!ID_PATTERN.test(id)) {
		return name === 'specimen.yaml' ? { kind: 'stray', reason: 'bad-name', found: id } : { kind: 'ignored' };
	}
	if (name === 'specimen.yaml') return { kind: 'specimen', id };
	const label = /^label\.([^.]+)\.md$/.exec(name);
	if (label) return { kind: 'text', of: 'specimen', id, language: label[1] };
	const sound = /^label\.([^.]+)\.mp3$/.exec(name);
	if (sound) return { kind: 'sound', id, language: sound[1] };
	if (/\.mp3$/i.test(name)) return { kind: 'stray', reason: 'unknown', meant: 'label.en.mp3' };
	if (SCAN_ENDING.test(name)) return { kind: 'asset', id, name };
	if (/^specimen\.(ya?ml|txt|yaml\.txt)$/i.test(name)) return ending(name, 'specimen.yaml');
	if (/^label\.md$/i.test(name)) return { kind: 'stray', reason: 'no-language', name: 'label.en.md' };
	const other = /^label\.([^.]+)\.(markdown|txt|md(\.txt)?)$/i.exec(name);
	if (other) return ending(name, `label.${other[1]}.md`);
	if (/^(specimens?|labels?)\b.*\.(ya?ml|md)$/i.test(name)) {
		return {
			kind: 'stray',
			reason: 'unknown',
			meant: /ya?ml$/i.test(name) ? 'specimen.yaml' : 'label.en.md',
		};
	}
	return { kind: 'stray', reason: 'unknown' };
}

const ending = (found: string, name: string): FileKind => ({
	kind: 'stray',
	reason: 'ending',
	found: found.slice(found.indexOf('.')),
	name,
});

/** Path of the file that holds an item's facts. */
export const factsPath = (of: TextOf, id: string) =>
	of === 'specimen' ? `specimens/${id}/specimen.yaml` : `${of}s/${id}.yaml`;

/** Path of the outline of a group's animal. */
export const drawingPath = (id: string) => `groups/${id}.svg`;

/** Path of the file that holds an item's words in a language. */
export const soundPath = (id: string, language: string) => `specimens/${id}/label.${language}.mp3`;
export const textPath = (of: TextOf, id: string, language: string) =>
	of === 'specimen' ? `specimens/${id}/label.${language}.md` : `${of}s/${id}.${language}.md`;
