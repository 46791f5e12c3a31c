import { finding, type Finding, type Place } from './finding';
import { certainWords } from './prose/certainWords';
import { countText, readingEase } from './prose/readingEase';
import { textBlocks } from './renderMarkdown';

/** Longest sentence, words: Smithsonian guidelines for accessible exhibition design. */
export const MOST_WORDS_IN_SENTENCE = 25;
/** Longest label, words (same source); French and Spanish need about a quarter more (CMHR graphic standards 5.5). */
export const MOST_WORDS_IN_LABEL = { en: 100, other: 125 } as const;

/**
 * Least reading ease: 60, which readers of 13 to 15 manage (about US grade 8, which Serrell 2015 advises for labels).
 * Below 100 words the figure is noisy, and names of animals weigh much: there a warning needs 10 points less,
 * and none is given below 30 words. The two lower numbers are ours.
 */
export const LEAST_EASE = { fromWords: 100, ease: 60, shortFromWords: 30, shortEase: 50 } as const;

const WORD = /[\p{L}\p{N}][\p{L}\p{N}'’.,-]*/gu;

/** Warnings on how a label reads. `linesBefore` are the lines of the file above `body`. */
export function proseFindings(body: string, linesBefore: number, language: string): Finding[] {
	const findings: Finding[] = [];
	const source = body.split('\n');
	const place = (line: number, words: string): Place => ({
		line: line + linesBefore + 1,
		column: Math.max(0, (source[line] ?? '').indexOf(words)) + 1,
	});
	let total = 0;
	const read: string[] = [];
	for (const block of textBlocks(body)) {
		for (const { text, offset } of sentences(block.content)) {
			const words = countWords(text);
			total += words;
			read.push(text);
			const line = block.line + block.content.slice(0, offset).split('\n').length - 1;
			const first = text.split('\n', 1)[0].slice(0, 40);
			if (words > MOST_WORDS_IN_SENTENCE) {
				findings.push(
					finding('long-sentence', place(line, first), '', {
						words,
						most: MOST_WORDS_IN_SENTENCE,
						begins: firstWords(text),
					}),
				);
			}
			for (const { word, offset: within } of certainWords(text, language)) {
				const at = place(lineOf(block, offset + within), word);
				findings.push(finding('too-certain', at, '', { word, language }));
			}
		}
		const picture = /!\[[^\]]{0,200}\]\([^)]{0,500}\)/.exec(block.content);
		if (picture)
			findings.push(finding('picture-left-out', place(lineOf(block, picture.index), picture[0]), '', null));
		const code = /<\/?[a-z][^>\n]{0,200}>/i.exec(block.content);
		if (code && !/^<(https?:|mailto:)/i.test(code[0])) {
			findings.push(
				finding('code-shown-as-text', place(lineOf(block, code.index), code[0]), '', { found: code[0] }),
			);
		}
	}
	const most = language === 'en' ? MOST_WORDS_IN_LABEL.en : MOST_WORDS_IN_LABEL.other;
	const first = Math.max(
		0,
		source.findIndex((line) => line.trim() !== ''),
	);
	const start: Place = { line: first + linesBefore + 1, column: 1 };
	if (total > most) findings.push(finding('long-label', start, '', { words: total, most }));
	const counts = countText(read, language);
	const ease = counts && readingEase(counts, language);
	if (counts && ease !== null && counts.words >= LEAST_EASE.shortFromWords) {
		const least = counts.words >= LEAST_EASE.fromWords ? LEAST_EASE.ease : LEAST_EASE.shortEase;
		if (ease < least)
			findings.push(finding('hard-to-read', start, '', { ease: Math.max(0, Math.floor(ease)), least }));
	}
	return findings;
}

const lineOf = (block: { line: number; content: string }, offset: number) =>
	block.line + block.content.slice(0, offset).split('\n').length - 1;

/** Sentences of running text, with where each begins. */
export function sentences(text: string): { text: string; offset: number }[] {
	const found: { text: string; offset: number }[] = [];
	let from = 0;
	for (const end of text.matchAll(/[.!?…]["'’”)\]*_]*(?=\s|$)/g)) {
		const to = end.index + end[0].length;
		push(from, to);
		from = to;
	}
	push(from, text.length);
	return found;

	function push(start: number, to: number) {
		const part = text.slice(start, to);
		const lead = part.length - part.trimStart().length;
		if (part.trim()) found.push({ text: part.trim(), offset: start + lead });
	}
}

export const countWords = (text: string) => text.replace(/\]\([^)]{0,500}\)/g, ']').match(WORD)?.length ?? 0;

const firstWords = (text: string) => `${text.split(/\s+/).slice(0, 6).join(' ')}…`;
