import type { Drawing } from './exhibit';
import { FILE_START, finding, type Finding, type Place } from './finding';
import type { DrawingFault } from './messages/codes';
import { badPathData } from './pathData';
import { svgElements } from './svgElements';

/** Longest path data of one drawing, characters; it is sent with every page that shows the animal. */
export const MOST_PATH_CHARACTERS = 20_000;

/** Elements that hold outlines, or only order them. */
const USED = new Set(['svg', 'g', 'path']);
/** Elements that are passed over with everything in them, as are those of a program's own namespace. */
const PASSED_OVER = new Set(['title', 'desc', 'metadata']);

const WHAT: Readonly<Record<string, DrawingFault>> = {
	script: 'script',
	style: 'style',
	a: 'link',
	use: 'link',
	image: 'picture',
	text: 'lettering',
	rect: 'rectangle',
	circle: 'circle',
	ellipse: 'ellipse',
	line: 'line',
	polyline: 'line',
	polygon: 'polygon',
};

/**
 * Takes the outlines out of a curator's SVG: the viewBox and the data of each path, checked sign by sign, and
 * nothing else of the file. Anything that a page could run, load or be styled by is a fault with its line.
 */
export function readDrawing(text: string): { drawing: Drawing | null; findings: Finding[] } {
	const read = svgElements(text);
	if (typeof read === 'number') {
		return { drawing: null, findings: [finding('drawing-not-svg', placeIn(text, read), '', null)] };
	}
	const findings: Finding[] = [];
	const forbidden = (at: number, what: DrawingFault, name?: string) =>
		findings.push(finding('drawing-forbidden', placeIn(text, at), '', { what, ...(name ? { name } : {}) }));
	const passedOver = (name: string) => PASSED_OVER.has(name) || name.includes(':');

	const paths: string[] = [];
	for (const { name, attributes, inside, at } of read.elements) {
		if (passedOver(name) || inside.some(passedOver)) continue;
		if (!USED.has(name)) forbidden(at, WHAT[name] ?? 'part', WHAT[name] ? undefined : name);
		for (const attribute of attributes) {
			const what = forbiddenAttribute(attribute.name.toLowerCase());
			if (what) forbidden(attribute.at, what);
		}
		const data = name === 'path' && attributes.find((attribute) => attribute.name === 'd');
		if (!data) continue;
		const d = data.value.replace(/\s+/g, ' ').trim();
		paths.push(d);
		const bad = badPathData(d);
		if (bad) {
			const words = { path: paths.length, found: bad.found };
			findings.push(finding('drawing-bad-path', placeIn(text, data.at), '', words));
		}
	}
	for (const { at, inside } of read.words) {
		// what stands in another element has that element's message
		if (inside.every((name) => USED.has(name))) forbidden(at, 'lettering');
	}

	const [svg] = read.elements;
	const written = svg.attributes.find(({ name }) => name === 'viewBox');
	const viewBox = written ? boxOf(written.value) : null;
	if (!viewBox) findings.push(finding('drawing-viewbox', placeIn(text, written?.at ?? svg.at), '', null));
	if (findings.length === 0 && paths.length === 0) {
		findings.push(finding('drawing-no-path', FILE_START, '', null));
	}
	const characters = paths.reduce((sum, path) => sum + path.length, 0);
	if (characters > MOST_PATH_CHARACTERS) {
		const most = MOST_PATH_CHARACTERS;
		findings.push(finding('drawing-too-detailed', FILE_START, '', { characters, most }));
	}
	return { drawing: viewBox && findings.length === 0 ? { viewBox, paths } : null, findings };
}

function forbiddenAttribute(name: string): DrawingFault | null {
	if (name.startsWith('on')) return 'script';
	if (name === 'style') return 'style';
	if (name === 'href' || name.endsWith(':href')) return 'link';
	return name === 'transform' ? 'transform' : null;
}

function boxOf(value: string): Drawing['viewBox'] | null {
	const numbers = value
		.trim()
		.split(/[\s,]+/)
		.map(Number);
	const [x, y, width, height] = numbers;
	const right = numbers.length === 4 && numbers.every(Number.isFinite) && width > 0 && height > 0;
	return right ? [x, y, width, height] : null;
}

function placeIn(text: string, offset: number): Place {
	const before = text.slice(0, offset).split('\n');
	return { line: before.length, column: before[before.length - 1].length + 1 };
}
