import { isMap, isSeq, type Node, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';

/**
 * Changes to a YAML text that leave every other byte as it is: the library says where each node stands,
 * and only the pieces that change are cut out and put in. All places are those of the text as it was.
 */
export interface YamlSplice {
	/** Gives a value another text, `written` as YAML on one line. */
	replace(node: Node, written: string): void;
	/** Puts `key: written` behind the last key of a map, in the style of that map. */
	addPair(map: YAMLMap, key: string, written: string): void;
	/** Puts a whole block of `lines` behind a pair of a block map, set in by `indent` spaces. */
	addLinesAfter(pair: Pair, indent: number, lines: readonly string[]): void;
	removePair(map: YAMLMap, key: string): void;
	/** Puts an item behind another one of a list, in the style of that list. */
	addItem(list: YAMLSeq, after: number, written: string): void;
	/** Takes out the items that are not to be kept; one at least must be. */
	keepItems(list: YAMLSeq, keep: (index: number) => boolean): void;
	/** Replaces all that a key holds, of whatever form, by what follows its colon. */
	replaceAll(pair: Pair, written: string): void;
	/** Spaces in front of a block map's keys. */
	indentOf(map: YAMLMap): number;
	/** Line end of this text. */
	readonly eol: string;
	/** The text with all changes made. */
	result(): string;
}

interface Cut {
	from: number;
	to: number;
	by: string;
	order: number;
}

export function yamlSplice(text: string): YamlSplice {
	const eol = text.includes('\r\n') ? '\r\n' : '\n';
	const cuts: Cut[] = [];
	const cut = (from: number, to: number, by: string): void => {
		cuts.push({ from, to, by, order: cuts.length });
	};
	const lineStart = (at: number): number => text.lastIndexOf('\n', at - 1) + 1;
	const lineEnd = (at: number): number => {
		const end = text.indexOf('\n', at);
		if (end < 0) return text.length;
		return text[end - 1] === '\r' ? end - 1 : end;
	};
	const nextLine = (at: number): number => {
		const end = text.indexOf('\n', at);
		return end < 0 ? text.length : end + 1;
	};
	const indentOf = (map: YAMLMap | YAMLSeq): number => map.range![0] - lineStart(map.range![0]);

	/** New lines behind the line on which something ends. */
	function linesAfter(end: number, lines: readonly string[]): void {
		const block = lines.join(eol);
		// a block of text ends at the beginning of the next line
		if (end > 0 && text[end - 1] === '\n') return cut(end, end, block + eol);
		cut(lineEnd(end), lineEnd(end), eol + block);
	}

	function removeLines(from: number, end: number): void {
		const to = text[end - 1] === '\n' ? end : nextLine(end);
		cut(lineStart(from), to, '');
	}

	/** Takes some of the things between brackets out, each with one comma. */
	function keepInFlow(
		places: readonly (readonly [from: number, to: number])[],
		keep: (index: number) => boolean,
	): void {
		const first = places.findIndex((_, i) => keep(i));
		places.forEach(([from, to], i) => {
			if (keep(i)) return;
			if (first >= 0 && first < i) cut(places[i - 1][1], to, '');
			else cut(from, places[i + 1]?.[0] ?? to, '');
		});
	}

	return {
		eol,
		indentOf,
		replace(node, written) {
			const [from, to] = node.range!;
			// behind a colon with nothing after it
			cut(from, to, from === to ? ` ${written}` : written);
		},
		replaceAll(pair, written) {
			const from = afterColon(pair);
			cut(from, Math.max(from, endOfPair(pair)), written);
		},
		addPair(map, key, written) {
			const last = map.items.at(-1);
			if (!map.flow) return linesAfter(endOfPair(last!), [`${' '.repeat(indentOf(map))}${key}: ${written}`]);
			if (!last) return cut(map.range![0] + 1, map.range![1] - 1, ` ${key}: ${written} `);
			cut(endOfPair(last), endOfPair(last), `, ${key}: ${written}`);
		},
		addLinesAfter(pair, indent, lines) {
			linesAfter(
				endOfPair(pair),
				lines.map((line) => (line === '' ? '' : ' '.repeat(indent) + line)),
			);
		},
		removePair(map, key) {
			const index = map.items.findIndex((pair) => (pair.key as Scalar).value === key);
			if (index < 0) return;
			const place = (pair: Pair) => [(pair.key as Node).range![0], endOfPair(pair)] as const;
			if (map.flow) keepInFlow(map.items.map(place), (i) => i !== index);
			else removeLines(...place(map.items[index]));
		},
		addItem(list, after, written) {
			const end = endOf(list.items[after] as Node);
			if (list.flow) cut(end, end, `, ${written}`);
			else linesAfter(end, [`${' '.repeat(indentOf(list))}- ${written}`]);
		},
		keepItems(list, keep) {
			const places = list.items.map((item) => [(item as Node).range![0], endOf(item as Node)] as const);
			if (list.flow) return keepInFlow(places, keep);
			places.forEach((place, i) => {
				if (!keep(i)) removeLines(...place);
			});
		},
		result() {
			let made = text;
			// from the end; at one place what is taken out goes before what is put in
			const order = (a: Cut, b: Cut) => b.from - a.from || b.to - a.to || b.order - a.order;
			for (const { from, to, by } of [...cuts].sort(order)) made = made.slice(0, from) + by + made.slice(to);
			return made;
		},
	};
}

/** Where the last sign of a node stands; the library's own range of a block runs into the next line. */
function endOf(node: Node): number {
	if (isMap(node) && !node.flow && node.items.length > 0) return endOfPair(node.items.at(-1)!);
	if (isSeq(node) && !node.flow && node.items.length > 0) return endOf(node.items.at(-1) as Node);
	return node.range![1];
}

const endOfPair = (pair: Pair): number =>
	Math.max(afterColon(pair), pair.value ? endOf(pair.value as Node) : 0);

/** Keys of these files are plain words with their colon right behind them. */
const afterColon = (pair: Pair): number => (pair.key as Node).range![1] + 1;
