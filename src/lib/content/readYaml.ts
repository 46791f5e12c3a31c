import { isAlias, isMap, isPair, isScalar, isSeq, LineCounter, parseDocument, type Node } from 'yaml';
import { fieldPath } from './fieldPath';
import { finding, type Finding, type Place } from './finding';
import { yamlProblem } from './yamlProblem';

/** Where each field of a file stands, by field path (`shape.model.sections[1].at`). */
export type Places = ReadonlyMap<string, FieldPlace>;

export interface FieldPlace {
	key: Place;
	value: Place;
	/** a number as it is written, where that is not how it is shown: `0104` */
	written?: string;
}

export interface YamlResult {
	/** plain values; undefined when the text cannot be trusted or says nothing */
	value: unknown;
	places: Places;
	findings: Finding[];
}

export interface YamlOptions {
	/** lines of the file above this text */
	linesBefore?: number;
	/** a `#` right after a text is more likely a part of it than a note */
	wordsForVisitors?: boolean;
}

const MOST_DEPTH = 20;
const MOST_BRACKET_DEPTH = 40;
/** The library's work grows with the square of the signs on a line: 20,000 would take 20 s. */
const MOST_SIGNS_IN_LINE = 1000;

/** Reads YAML into plain values with the place of each; never throws, whatever the text holds. */
export function readYaml(text: string, options: YamlOptions = {}): YamlResult {
	const before = options.linesBefore ?? 0;
	const deep = tooDeep(text);
	if (deep) {
		return {
			value: undefined,
			places: new Map(),
			findings: [finding('too-deep', { line: deep.line + before, column: deep.column }, '', null)],
		};
	}
	const counter = new LineCounter();
	const document = parseDocument(text, {
		lineCounter: counter,
		// the library compares every pair of keys; that takes minutes on a hostile file, so it is done below
		uniqueKeys: false,
		prettyErrors: false,
		logLevel: 'error',
	});
	const placeOf = (offset: number): Place => {
		const at = counter.linePos(Math.max(0, Math.min(offset, text.length)));
		return { line: Math.max(1, at.line) + before, column: Math.max(1, at.col) };
	};

	const findings: Finding[] = [];
	for (const error of [...document.errors, ...document.warnings]) {
		// what follows the first error mostly follows from it; tabs alone are each a mistake of their own
		if (findings.length > 0 && (findings[0].id !== 'tab-indent' || error.code !== 'TAB_AS_INDENT')) continue;
		const found = yamlProblem(error, text, document.contents, placeOf);
		if (found.line !== findings.at(-1)?.line) findings.push(found);
	}
	// after such an error the rest of the values may stand in the wrong place
	if (findings.length > 0) return { value: undefined, places: new Map(), findings };

	const places = new Map<string, FieldPlace>();
	let trusted = true;

	const distrust = (found: Finding) => {
		findings.push(found);
		trusted = false;
	};

	function walk(node: unknown, path: (string | number)[], key: Place): unknown {
		const range = (node as Node | null)?.range;
		const place = range ? placeOf(range[0]) : key;
		const at = fieldPath(path);
		places.set(at, { key, value: place });
		if (node === null || node === undefined) return null;
		if (path.length > MOST_DEPTH) {
			distrust(finding('too-deep', place, at, null));
			return null;
		}
		if (isAlias(node)) {
			distrust(finding('reference-sign', place, at, { sign: '*' }));
			return null;
		}
		if ((isMap(node) || isSeq(node) || isScalar(node)) && node.anchor) {
			const line = text.lastIndexOf('&', range![0]);
			distrust(finding('reference-sign', line < 0 ? place : placeOf(line), at, { sign: '&' }));
			return null;
		}
		if (isScalar(node)) {
			if (options.wordsForVisitors && node.comment && range && text[range[1]] === ' ') {
				const hash = text.indexOf('#', range[1]);
				if (hash >= 0 && hash < range[2] && /\S/.test(text[hash + 1] ?? '')) {
					const name = String(path[path.length - 1] ?? 'title');
					findings.push(
						finding('hash-cuts-text', placeOf(hash), at, {
							key: name,
							text: `${node.value} #${node.comment}`,
						}),
					);
				}
			}
			if (isNumberLike(node.value) && node.source !== undefined && node.source !== String(node.value)) {
				places.set(at, { key, value: place, written: node.source });
			}
			return typeof node.value === 'bigint' ? Number(node.value) : node.value;
		}
		if (isSeq(node))
			return node.items.map((item, i) =>
				walk(item, [...path, i], placeOf((item as Node)?.range?.[0] ?? range![0])),
			);
		if (isMap(node)) {
			const value: Record<string, unknown> = Object.create(null);
			for (const pair of node.items) {
				if (!isPair(pair)) continue;
				const keyNode = pair.key as Node | null;
				const keyPlace = keyNode?.range ? placeOf(keyNode.range[0]) : place;
				if (!isScalar(keyNode) || keyNode.value === null || keyNode.anchor) {
					const sign = isAlias(keyNode) ? '*' : isScalar(keyNode) && keyNode.anchor ? '&' : null;
					distrust(
						sign
							? finding('reference-sign', keyPlace, at, { sign })
							: finding('line-not-understood', keyPlace, at, { line: lineAt(text, keyPlace.line - before) }),
					);
					continue;
				}
				const name = isNumberLike(keyNode.value)
					? (keyNode.source ?? String(keyNode.value))
					: String(keyNode.value);
				const keyPath = [...path, name];
				const first = places.get(fieldPath(keyPath));
				if (Object.hasOwn(value, name) || name === '__proto__') {
					findings.push(
						finding('duplicate-key', keyPlace, fieldPath(keyPath), {
							key: name,
							firstLine: first?.key.line ?? keyPlace.line,
						}),
					);
					continue;
				}
				value[name] = walk(pair.value, keyPath, keyPlace);
			}
			return value;
		}
		return null;
	}

	const value = walk(document.contents, [], { line: 1 + before, column: 1 });
	return { value: trusted ? value : undefined, places, findings };
}

const SIGNS: ReadonlySet<string> = new Set('[]{},:"\'*&!?|>-%@`');
const isNumberLike = (value: unknown) => typeof value === 'number' || typeof value === 'bigint';

/** Text of a line, from 1. */
export function lineAt(text: string, line: number): string {
	let from = 0;
	for (let i = 1; i < line; i++) {
		const end = text.indexOf('\n', from);
		if (end < 0) return '';
		from = end + 1;
	}
	const end = text.indexOf('\n', from);
	return text.slice(from, end < 0 ? undefined : end);
}

/**
 * Signs nested so deep, lines set in so far, or so many signs on a line, that the library would run for minutes
 * or out of memory (it builds a regular expression as long as the indent).
 */
function tooDeep(text: string): Place | null {
	let depth = 0;
	let signs = 0;
	let line = 1;
	let lineStart = 0;
	for (let i = 0; i < text.length; i++) {
		const c = text[i];
		if (i === lineStart && /^(?:[ \t]|[-?:](?=[ \t])){200}/.test(text.slice(i, i + 201)))
			return { line, column: 1 };
		if (c === '\n') {
			line++;
			lineStart = i + 1;
			signs = 0;
		} else if (c === '[' || c === '{') {
			if (++depth > MOST_BRACKET_DEPTH) return { line, column: i - lineStart + 1 };
		} else if (c === ']' || c === '}') depth = Math.max(0, depth - 1);
		if (SIGNS.has(c) && ++signs > MOST_SIGNS_IN_LINE) return { line, column: i - lineStart + 1 };
	}
	return null;
}
