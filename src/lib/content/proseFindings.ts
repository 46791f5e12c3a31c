import { finding, type Finding, type Place } from './finding';
import { textBlocks } from './renderMarkdown';

/** Longest sentence, words: Smithsonian guidelines for accessible exhibition design. */
export const MOST_WORDS_IN_SENTENCE = 25;
/** Longest label, words (same source); French and Spanish need about a quarter more (CMHR graphic standards 5.5). */
export const MOST_WORDS_IN_LABEL = { en: 100, other: 125 } as const;

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
	for (const block of textBlocks(body)) {
		for (const { text, offset } of sentences(block.content)) {
			const words = countWords(text);
			total += words;
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
	if (total > most) {
		const first = Math.max(
			0,
			source.findIndex((line) => line.trim() !== ''),
		);
		findings.push(
			finding('long-label', { line: first + linesBefore + 1, column: 1 }, '', { words: total, most }),
		);
	}
	return findings;
}

const lineOf = (block: { line: number; content: string }, offset: number) =>
	block.line + block.content.slice(0, offset).split('\n').length - 1;

function sentences(text: string): { text: string; offset: number }[] {
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
