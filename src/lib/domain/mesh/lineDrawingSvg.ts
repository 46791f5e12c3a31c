import { hatch } from './hatch';
import { lineDrawingLayout, type DrawnPart, type LineDrawingLayout } from './lineDrawingLayout';
import { simplifyLine } from './simplifyLine';
import { simplifyLoop } from './simplifyLoop';
import type { DrawnView, LineDrawing } from './lineDrawing';
import type { LineKind } from './surfaceLine';

export interface LineDrawingSvgOptions {
	/** size of the picture, px; the drawing is made as large as fits */
	width: number;
	height: number;
	/** words under each view; without them there are none */
	labels?: Readonly<Record<DrawnPart, string>>;
	/** text of the scale bar, such as `10 mm`; default in English notation */
	scaleText?: (length_mm: number) => string;
	/** name and description for those who cannot see it; without a title the picture is hidden from them */
	title?: string;
	desc?: string;
	/** size of the words, px; default 15, in narrow pictures 13 */
	textSize?: number;
	/** thickness of the outline, px; the others follow; default 1.9 */
	weight?: number;
}

/** Thickness of each kind of line over that of the outline: outlines heavy, features light. */
const WEIGHTS: Readonly<Record<LineKind | 'foldMiddle' | 'hatch' | 'dot' | 'mark', number>> = {
	outline: 1,
	fold: 0.45,
	foldMiddle: 0.75,
	base: 0.55,
	rim: 0.6,
	break: 0.5,
	edge: 0.52,
	facet: 0.45,
	ridge: 0.36,
	hatch: 0.34,
	dot: 0.62,
	mark: 0.5,
};

const NARROW_px = 320;
const HATCH_px = 5;
const MARK_px = 9;
/** A fold runs out thin over this length. */
const TAPER_px = 14;
/** Share of a mean letter's width in its size, for the space that words need. */
const LETTER = 0.56;
/** Height of a line of words over their size. */
const LINE = 1.3;
/** Coordinates are whole numbers of 1/20 px. */
const UNIT = 20;
const FINEST_px = 0.12;

/**
 * A drawing as SVG text that can stand in a page: one colour (`currentColor`), no style, no ids. All parts are at one
 * scale, with a scale bar; the group that holds it carries `data-px-per-mm`, and each part `data-part`.
 */
export function lineDrawingSvg(drawing: LineDrawing, options: LineDrawingSvgOptions): string {
	const { width, height, labels } = options;
	const text = options.textSize ?? (width < NARROW_px ? 13 : 15);
	const weight = options.weight ?? 1.9;
	const scaleText = options.scaleText ?? ((mm: number) => `${mm} mm`);
	const lineHeight = text * LINE;
	const { words, layout } = roomForWords(labels, text, (labelLines, leastWidth) =>
		lineDrawingLayout(drawing, { width, height, lineHeight, labelLines, leastWidth }),
	);
	const { pxPerMm, parts, bar } = layout;
	const out: string[] = [
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(width)} ${short(height)}"`,
		` width="${short(width)}" height="${short(height)}" fill="none" stroke="currentColor"`,
		' stroke-linecap="round" stroke-linejoin="round"',
		options.title ? ' role="img">' : ' aria-hidden="true">',
		options.title ? `<title>${escaped(options.title)}</title>` : '',
		options.desc ? `<desc>${escaped(options.desc)}</desc>` : '',
	];
	const thick = (kind: keyof typeof WEIGHTS): number => Math.round(weight * WEIGHTS[kind] * UNIT);
	for (const { part, x, y } of parts) {
		const pen = new Pen(pxPerMm);
		out.push(
			`<g data-part="${part}" transform="translate(${short(x)} ${short(y)}) scale(${1 / UNIT})">`,
			...(part === 'section'
				? cutFace(drawing.section?.loops ?? [], pen, thick)
				: seenView(drawing[part], pen, thick, sectionMarks(drawing, part, pxPerMm))),
			'</g>',
		);
	}
	if (bar.length_px > 0) {
		const [x0, x1] = [short(bar.x), short(bar.x + bar.length_px)];
		const y = short(bar.y);
		out.push(
			`<path data-part="scale" data-px-per-mm="${pxPerMm.toFixed(6)}" data-mm="${bar.length_mm}"`,
			` stroke-width="${short(weight * 0.75)}" stroke-linecap="butt" d="M${x0} ${y - 7}V${y}H${x1}V${y - 7}"/>`,
		);
	}
	if (words || bar.length_px > 0) {
		out.push(`<g fill="currentColor" stroke="none" font-size="${short(text)}">`);
		for (const { part, labelX, labelY } of words ? parts : []) {
			const [x, y] = [short(labelX), short(labelY)];
			const lines = words![part].map(escaped);
			out.push(
				`<text x="${x}" y="${y}" text-anchor="middle">`,
				...lines.map((line, i) =>
					i === 0 ? line : ` <tspan x="${x}" dy="${short(lineHeight)}">${line}</tspan>`,
				),
				'</text>',
			);
		}
		if (bar.length_px > 0) {
			const [x, y] = [short(bar.x + bar.length_px + text * 0.6), short(bar.y)];
			out.push(`<text x="${x}" y="${y}">${escaped(scaleText(bar.length_mm))}</text>`);
		}
		out.push('</g>');
	}
	out.push('</svg>');
	return out.join('');
}

type Words = Readonly<Record<DrawnPart, readonly string[]>>;

/**
 * Words on one line each; on two where that lets the drawing be clearly larger; none where they would leave it less
 * than half its size.
 */
function roomForWords(
	labels: LineDrawingSvgOptions['labels'],
	textSize: number,
	layoutFor: (labelLines: number, leastWidth?: Record<DrawnPart, number>) => LineDrawingLayout,
): { words: Words | null; layout: LineDrawingLayout } {
	const bare = layoutFor(0);
	if (!labels) return { words: null, layout: bare };
	const [one, two] = [1, 2].map((most) => {
		const entries = Object.entries(labels) as [DrawnPart, string][];
		const words = Object.fromEntries(
			entries.map(([part, label]) => [part, most === 1 ? [label] : twoLines(label)]),
		) as unknown as Words;
		const least = Object.fromEntries(
			Object.entries(words).map(([part, lines]) => [
				part,
				Math.max(...lines.map((line) => line.length)) * LETTER * textSize,
			]),
		) as Record<DrawnPart, number>;
		const lines = Math.max(...Object.values(words).map((of) => of.length));
		return { words, layout: layoutFor(lines, least) };
	});
	const best = one.layout.pxPerMm >= 0.85 * two.layout.pxPerMm ? one : two;
	return best.layout.pxPerMm >= 0.5 * bare.pxPerMm ? best : { words: null, layout: bare };
}

/** Broken at the space that leaves the longer line shortest. */
function twoLines(label: string): string[] {
	let best = [label];
	for (let i = label.indexOf(' '); i > 0; i = label.indexOf(' ', i + 1)) {
		const halves = [label.slice(0, i), label.slice(i + 1)];
		const longest = (lines: string[]): number => Math.max(...lines.map((line) => line.length));
		if (longest(halves) < longest(best)) best = halves;
	}
	return best;
}

/** Turns mm into path data in whole units. */
class Pen {
	/** px per mm */
	readonly scale: number;
	constructor(scale: number) {
		this.scale = scale;
	}
	line(points: ArrayLike<number>, closed: boolean): string {
		const tolerance = FINEST_px / this.scale;
		const few = closed
			? simplifyLoop(Float64Array.from(points), tolerance)
			: simplifyLine(Array.from(points), tolerance);
		let [x, y] = [0, 0];
		let path = '';
		for (let i = 0; i < few.length; i += 2) {
			const [toX, toY] = [this.units(few[i]), this.units(-few[i + 1])];
			if (i > 0 && toX === x && toY === y) continue;
			const [dx, dy] = i === 0 ? [toX, toY] : [toX - x, toY - y];
			path += `${i === 0 ? 'M' : i === 2 ? 'l' : dx < 0 ? '' : ' '}${dx}${dy < 0 ? '' : ' '}${dy}`;
			[x, y] = [toX, toY];
		}
		return closed ? `${path}z` : path;
	}
	dots(points: readonly number[]): string {
		let path = '';
		for (let i = 0; i < points.length; i += 2)
			path += `M${this.units(points[i])} ${this.units(-points[i + 1])}h0`;
		return path;
	}
	units(mm: number): number {
		return Math.round(mm * this.scale * UNIT) || 0;
	}
}

type Thickness = (kind: keyof typeof WEIGHTS) => number;

function seenView(view: DrawnView, pen: Pen, thick: Thickness, marks: number[][]): string[] {
	const out: string[] = [];
	if (view.dots.length > 0)
		out.push(`<path data-kind="dots" stroke-width="${thick('dot')}" d="${pen.dots(view.dots)}"/>`);
	const kinds = new Set(view.lines.map(({ kind }) => kind));
	// the outline last, over the ends of all others
	for (const kind of [...kinds].reverse()) {
		const path = view.lines
			.filter((line) => line.kind === kind)
			.map(({ points, closed }) => pen.line(points, closed))
			.join('');
		out.push(`<path data-kind="${kind}" stroke-width="${thick(kind)}" d="${path}"/>`);
		if (kind !== 'fold') continue;
		const middles = view.lines
			.filter((line) => line.kind === kind && !line.closed)
			.map(({ points }) => pen.line(withoutEnds(points, TAPER_px / pen.scale), false))
			.join('');
		if (middles) out.push(`<path stroke-width="${thick('foldMiddle')}" d="${middles}"/>`);
	}
	if (marks.length > 0) {
		const path = marks.map((mark) => pen.line(mark, false)).join('');
		out.push(`<path data-kind="mark" stroke-width="${thick('mark')}" d="${path}"/>`);
	}
	return out;
}

/** An open line without a piece of the given length at both ends; nothing of a line that is shorter than both. */
function withoutEnds(points: readonly number[], length: number): number[] {
	const cutStart = (line: readonly number[]): number[] => {
		let left = length;
		for (let i = 2; i < line.length; i += 2) {
			const [x0, y0, x1, y1] = line.slice(i - 2, i + 2);
			const piece = Math.hypot(x1 - x0, y1 - y0);
			if (piece > left) {
				const t = left / piece;
				return [x0 + (x1 - x0) * t, y0 + (y1 - y0) * t, ...line.slice(i)];
			}
			left -= piece;
		}
		return [];
	};
	const turned = (line: readonly number[]): number[] =>
		Array.from(line, (_, i) => line[line.length - 2 - i + 2 * (i % 2)]);
	return turned(cutStart(turned(cutStart(points))));
}

/** Short strokes on both sides of the tooth at the height where it is cut. */
function sectionMarks({ section }: LineDrawing, part: DrawnPart, scale: number): number[][] {
	if (!section || part === 'tip' || part === 'section') return [];
	const [least, most] = section[part];
	const [near, far] = [MARK_px / 2 / scale, (MARK_px * 1.5) / scale];
	return [
		[least - far, section.at, least - near, section.at],
		[most + near, section.at, most + far, section.at],
	];
}

function cutFace(loops: readonly number[][], pen: Pen, thick: Thickness): string[] {
	const lines = hatch(loops, HATCH_px / pen.scale)
		.map((line) => pen.line(line, false))
		.join('');
	const border = loops.map((loop) => pen.line(loop, true)).join('');
	return [
		`<path data-kind="hatch" stroke-width="${thick('hatch')}" d="${lines}"/>`,
		`<path data-kind="outline" stroke-width="${thick('outline')}" d="${border}"/>`,
	];
}

const short = (x: number): number => Math.round(x * 100) / 100;

const ENTITIES: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
};
const escaped = (text: string): string => text.replace(/[&<>"]/g, (letter) => ENTITIES[letter]);
