import { isScalar, visit, type Node, type YAMLError, type YAMLParseError } from 'yaml';
import { finding, type Finding, type Place } from './finding';

/** Says what a YAML error means for the one who typed the line. */
export function yamlProblem(
	error: YAMLError | YAMLParseError,
	text: string,
	contents: unknown,
	placeOf: (offset: number) => Place,
): Finding {
	const offset = Math.max(0, Math.min(error.pos[0], text.length));
	const at = placeOf(offset);
	const from = text.lastIndexOf('\n', offset - 1) + 1;
	const end = text.indexOf('\n', from);
	const line = text.slice(from, end < 0 ? undefined : end);
	const nextLine = end < 0 ? '' : text.slice(end + 1, text.indexOf('\n', end + 1) + 1 || undefined);
	const column = offset - from;
	const lineText = line.trim();
	const key = /^\s*(?:- )?([\w-]+):/.exec(line)?.[1] ?? 'title';
	const plain = (): Finding => {
		const nospace = /^\s*(?:- )?([\w-]+):(\S.*)$/.exec(line);
		if (nospace && !/^\s*(?:- )?[\w-]+: /.test(line)) {
			const start = { ...at, column: line.indexOf(nospace[1]) + 1 };
			return finding('missing-space', start, '', {
				found: lineText,
				meant: `${nospace[1]}: ${nospace[2].trim()}`,
			});
		}
		if (!/:(\s|$)/.test(line) && lineText && !lineText.startsWith('-')) {
			return finding('missing-colon', { ...at, column: line.length - line.trimStart().length + 1 }, '', {
				line: lineText,
			});
		}
		return finding('line-not-understood', at, '', { line: lineText });
	};

	const odd = oddSpace(text, at.line, from);
	if (odd) return finding('odd-space', { line: at.line - (odd.above ? 1 : 0), column: odd.column }, '', null);

	switch (error.code as string) {
		case 'TAB_AS_INDENT':
			return finding('tab-indent', at, '', null);
		case 'BAD_INDENT': {
			if (/^Flow/.test(error.message)) {
				if (/^\s*\t/.test(line)) return finding('tab-indent', { ...at, column: 1 }, '', null);
				return unclosedBracket(error.message, text, offset, placeOf);
			}
			return finding('bad-indent', { ...at, column: line.length - line.trimStart().length + 1 }, '', null);
		}
		case 'BLOCK_AS_IMPLICIT_KEY': {
			const value = line.slice(line.indexOf(':') + 1).trim();
			const isText = /^\s*(?:- )?[\w-]+: /.test(line) && !/^[[{]/.test(value);
			if (isText && /:(\s|$)/.test(value)) return finding('colon-in-text', at, '', { key, text: value });
			if (!isText)
				return finding('bad-indent', { ...at, column: line.length - line.trimStart().length + 1 }, '', null);
			const lead = nextLine.length - nextLine.trimStart().length;
			return finding('bad-indent', { line: at.line + 1, column: lead + 1 }, '', null);
		}
		case 'MISSING_CHAR': {
			if (/quote/.test(error.message)) return unclosedQuote(error.message, contents, offset, at, placeOf);
			if (/comma|,/.test(error.message)) return finding('missing-comma', at, '', null);
			if (/\]|\}/.test(error.message)) return unclosedBracket(error.message, text, offset, placeOf);
			return plain();
		}
		case 'BLOCK_IN_FLOW':
			return finding('missing-comma', at, '', null);
		case 'MULTILINE_IMPLICIT_KEY':
			return plain();
		case 'UNEXPECTED_TOKEN': {
			if (/flow-(seq|map)-end/.test(error.message)) return finding('extra-bracket', at, '', null);
			if (/block-seq-ind/.test(error.message)) return finding('list-on-line', at, '', null);
			if (/at node end/.test(error.message)) {
				const value = line.slice(line.indexOf(':') + 1).trim();
				if (/^["']/.test(value)) return finding('text-after-quote', at, '', { line: value });
				if (/^[*{[]/.test(value)) {
					return finding('special-sign', valuePlace(line, at), '', {
						sign: value[0],
						line: quotedLine(key, value),
					});
				}
			}
			if (/^[>|]/.test(line.slice(line.indexOf(':') + 1).trim())) {
				const value = line.slice(line.indexOf(':') + 1).trim();
				return finding('special-sign', valuePlace(line, at), '', {
					sign: value[0],
					line: quotedLine(key, value),
				});
			}
			return plain();
		}
		case 'BAD_SCALAR_START':
		case 'TAG_RESOLVE_FAILED': {
			const value = line.slice(column).trim();
			return finding('special-sign', at, '', { sign: value[0] ?? '!', line: quotedLine(key, value) });
		}
		case 'BAD_ALIAS':
			return finding('reference-sign', at, '', { sign: text[offset] === '&' ? '&' : '*' });
		case 'BAD_DQ_ESCAPE':
			return finding('bad-backslash', at, '', null);
		case 'MULTIPLE_DOCS':
			return finding('second-part', at, '', null);
		default:
			return plain();
	}
}

/** A space that is none to YAML, where a line or the one above it begins, or behind the colon; null if there is none. */
function oddSpace(text: string, line: number, from: number): { above: boolean; column: number } | null {
	const end = text.indexOf('\n', from);
	const own = text.slice(from, end < 0 ? undefined : end);
	const before = from < 2 ? '' : text.slice(text.lastIndexOf('\n', from - 2) + 1, from - 1);
	for (const [above, words] of [
		[false, own],
		[line > 1, before],
	] as const) {
		const odd = /^([ \t]*|\s*(?:- )?[\w-]+:)[\u00A0\u2007\u202F\u200B\u3000]/.exec(words);
		if (odd) return { above, column: odd[0].length };
	}
	return null;
}

const quotedLine = (key: string, value: string) => `${key}: "${value.replace(/"/g, "'")}"`;

const valuePlace = (line: string, at: Place): Place => {
	const after = line.slice(line.indexOf(':') + 1);
	return { line: at.line, column: line.indexOf(':') + 2 + (after.length - after.trimStart().length) };
};

/** The library reports an open quote at the end of the file; its beginning is what helps. */
function unclosedQuote(
	message: string,
	contents: unknown,
	offset: number,
	at: Place,
	placeOf: (offset: number) => Place,
): Finding {
	const quote = message.includes('"') ? '"' : "'";
	let start = -1;
	visit(contents as Node, (_key, node) => {
		if (
			isScalar(node) &&
			String(node.type).startsWith('QUOTE') &&
			node.range &&
			node.range[1] >= offset - 1
		) {
			start = node.range[0];
		}
	});
	return finding('unclosed-quote', start < 0 ? at : placeOf(start), '', { quote });
}

/** The same for brackets: look back for the one that is still open. */
function unclosedBracket(
	message: string,
	text: string,
	offset: number,
	placeOf: (offset: number) => Place,
): Finding {
	const close = /\]/.test(message) ? ']' : '}';
	const open = close === ']' ? '[' : '{';
	let depth = 0;
	for (let i = offset - 1; i >= 0; i--) {
		if (text[i] === close) depth++;
		else if (text[i] === open && depth-- === 0)
			return finding('unclosed-bracket', placeOf(i), '', { open, close });
	}
	return finding('unclosed-bracket', placeOf(offset), '', { open, close });
}
