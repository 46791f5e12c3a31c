export interface SvgElement {
	name: string;
	/** name as written, value, place in the text */
	attributes: { name: string; value: string; at: number }[];
	/** names of the elements round it, outermost first */
	inside: string[];
	at: number;
}

/** Words between elements, where they begin, and in which element they stand. */
export interface SvgWords {
	at: number;
	inside: string[];
}

const TAG = /<(\/?)([A-Za-z][\w:.-]*)((?:\s+[\w:.-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>/y;
const ATTRIBUTE = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/**
 * The elements of an SVG file in their order, with what stands between them. No entity is put in place and nothing is
 * run: this only says what is there. A number instead of a list is the place where the file stops being an SVG.
 */
export function svgElements(text: string): { elements: SvgElement[]; words: SvgWords[] } | number {
	const elements: SvgElement[] = [];
	const words: SvgWords[] = [];
	const open: string[] = [];
	let at = 0;
	/** behind the next `end`, or null when there is none */
	const past = (end: string) => {
		const found = text.indexOf(end, at);
		return found < 0 ? null : found + end.length;
	};
	while (at < text.length) {
		const here = text.slice(at, at + 9);
		const before = open.length === 0;
		let next: number | null;
		if (here.startsWith('<!--')) next = past('-->');
		else if (here.startsWith('<?xml') && before) next = past('?>');
		else if (/^<!doctype/i.test(here) && before) {
			next = past('>');
			if (next !== null && text.slice(at, next).includes('[')) next = null;
		} else if (here.startsWith('<')) {
			TAG.lastIndex = at;
			const tag = TAG.exec(text);
			if (!tag) return at;
			const [whole, closing, name, attributes, closed] = tag;
			next = at + whole.length;
			if (closing) {
				if (open.pop() !== name) return at;
			} else {
				if (before && (name !== 'svg' || elements.length > 0)) return at;
				const from = at + 1 + name.length;
				elements.push({
					name,
					attributes: [...attributes.matchAll(ATTRIBUTE)].map((match) => ({
						name: match[1],
						value: match[2] ?? match[3],
						at: from + match.index,
					})),
					inside: [...open],
					at,
				});
				if (!closed) {
					open.push(name);
					// a script's own < does not open an element
					if (name === 'script' || name === 'style') {
						at = next;
						const end = past(`</${name}`);
						next = end === null ? null : end - name.length - 2;
					}
				}
			}
		} else {
			const end = text.indexOf('<', at);
			next = end < 0 ? text.length : end;
			const first = text.slice(at, next).search(/\S/);
			if (first >= 0) {
				if (before) return at + first;
				words.push({ at: at + first, inside: [...open] });
			}
		}
		if (next === null) return at;
		at = next;
	}
	return open.length > 0 || elements.length === 0 ? text.length : { elements, words };
}
