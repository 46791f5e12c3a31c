import { finding, type Finding } from './finding';
import { readYaml, type YamlResult } from './readYaml';

export interface MarkdownFile {
	/** the short lines between the lines of hyphens */
	top: YamlResult;
	body: string;
	/** lines of the file above the body */
	bodyLine: number;
	findings: Finding[];
}

/** Takes a text file apart: short lines between two lines of `---`, then the text. Null when there are none. */
export function readMarkdownFile(text: string, example: string): MarkdownFile | { findings: Finding[] } {
	const lines = text.split('\n');
	const open = lines.findIndex((line) => line.trim() !== '');
	if (open < 0 || !/^---\s*$/.test(lines[open])) {
		return { findings: [finding('no-top-lines', { line: open + 1, column: 1 }, '', { example })] };
	}
	const close = lines.findIndex((line, i) => i > open && /^---\s*$/.test(line));
	if (close < 0)
		return { findings: [finding('top-lines-not-closed', { line: open + 1, column: 1 }, '', null)] };
	const top = readYaml(lines.slice(open + 1, close).join('\n'), {
		linesBefore: open + 1,
		wordsForVisitors: true,
	});
	return { top, body: lines.slice(close + 1).join('\n'), bodyLine: close + 1, findings: top.findings };
}
