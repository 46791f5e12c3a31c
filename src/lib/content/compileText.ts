import { checkFields } from './checkFields';
import type { GroupText, LabelText } from './exhibit';
import { placeOf } from './explainIssue';
import type { TextOf } from './fileKind';
import { finding, type Finding, type Place } from './finding';
import { exampleFor } from './messages';
import { numberWithUnit } from './prose/numberWithUnit';
import { countWords, proseFindings } from './proseFindings';
import { readMarkdownFile } from './readMarkdownFile';
import type { Places } from './readYaml';
import { renderMarkdown } from './renderMarkdown';
import { groupTextSchema, labelSchema, nameTextSchema } from './schemas';

export interface CompiledText {
	/** absent when the file has errors */
	label?: LabelText;
	name?: GroupText;
	/** the first quantity that the text claims */
	number?: { found: string; place: Place };
	places: Places;
}

/** Checks one file of words for visitors by itself. */
export function compileText(
	text: string,
	of: TextOf,
	language: string,
): { compiled: CompiledText; findings: Finding[] } {
	const example = of === 'specimen' ? exampleFor('title') : exampleFor('name');
	const file = readMarkdownFile(text, example);
	if (!('top' in file)) return { compiled: { places: new Map() }, findings: file.findings };

	const { top, body } = file;
	const findings = [...file.findings];
	const prose = of === 'bed' ? [] : proseFindings(body, file.bodyLine, language);
	const compiled: CompiledText = { places: top.places };
	const number = numberWithUnit(body);
	if (number) {
		const { found, line, column } = number;
		compiled.number = { found, place: { line: file.bodyLine + line + 1, column } };
	}
	// undefined = the short lines cannot be read; null = there are none
	if (top.value !== undefined) {
		const raw = top.value ?? {};
		const { html, plain } = renderMarkdown(body);
		if (of === 'specimen') {
			const checked = checkFields(labelSchema, raw, top.places);
			findings.push(...checked.findings);
			const found = checked.value;
			if (found) {
				const alt = found.alt ?? '';
				if (!alt) findings.push(finding('alt-missing', { line: 1, column: 1 }, 'alt', null));
				else if (bare(alt) === bare(found.title)) {
					findings.push(finding('alt-repeats-title', placeOf(top.places, ['alt']), 'alt', null));
				}
				if (noErrors(findings)) {
					const { title, short, features } = found;
					compiled.label = { title, short, alt: alt || short, features: features ?? {}, html, plain };
				}
			}
		} else {
			const schema = of === 'group' ? groupTextSchema : nameTextSchema;
			const checked = checkFields<Omit<GroupText, 'html' | 'plain'>>(schema, raw, top.places);
			findings.push(...checked.findings, ...longLines(raw, language, top.places));
			if (checked.value && noErrors(findings)) compiled.name = { ...checked.value, html, plain };
			if (of === 'bed' && body.trim() !== '') {
				const first = body.split('\n').findIndex((line) => line.trim() !== '');
				findings.push(finding('text-not-shown', { line: file.bodyLine + first + 1, column: 1 }, '', null));
			}
		}
	}
	return { compiled, findings: [...findings, ...prose] };
}

/** Words that are read at a glance; French and Spanish need about a quarter more (see proseFindings). */
const MOST_WORDS_IN_LINE = { en: 15, other: 19 } as const;
const LINES = ['moves', 'lives', 'eats', 'eaten_by'];

/** Warnings on short lines that are not short. */
function longLines(raw: unknown, language: string, places: Places): Finding[] {
	const most = language === 'en' ? MOST_WORDS_IN_LINE.en : MOST_WORDS_IN_LINE.other;
	return Object.entries(raw as object).flatMap(([key, value]) => {
		const words = typeof value === 'string' && LINES.includes(key) ? countWords(value) : 0;
		return words > most ? [finding('long-line', placeOf(places, [key]), key, { key, words, most })] : [];
	});
}

const noErrors = (findings: Finding[]) => findings.every(({ severity }) => severity !== 'error');
const bare = (text: string) =>
	text
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, ' ')
		.trim();
