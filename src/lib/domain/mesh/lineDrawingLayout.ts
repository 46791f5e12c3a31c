import { DRAWN_VIEWS } from './drawingAxes';
import type { LineDrawing } from './lineDrawing';

const PARTS = [...DRAWN_VIEWS, 'section'] as const;
export type DrawnPart = (typeof PARTS)[number];

export interface LineDrawingSpace {
	/** px */
	width: number;
	height: number;
	/** height of one line of text, px */
	lineHeight: number;
	/** lines of text under each view; 0 for no labels */
	labelLines: number;
	/** least width of each part, px, such as its label needs */
	leastWidth?: Partial<Record<DrawnPart, number>>;
}

export interface PlacedPart {
	part: DrawnPart;
	/** where the part's own origin comes to lie, px to the right and down */
	x: number;
	y: number;
	/** middle of the label, px */
	labelX: number;
	/** baseline of the label's first line, px */
	labelY: number;
}

export interface LineDrawingLayout {
	pxPerMm: number;
	parts: PlacedPart[];
	/** scale bar: 1, 2 or 5 times a power of ten */
	bar: { x: number; y: number; length_mm: number; length_px: number };
}

/** Parts side by side; an inner list stands in one column, from the top down. */
type Arrangement = readonly (readonly DrawnPart[])[];

const ARRANGEMENTS: readonly Arrangement[] = [
	[
		['side', 'tip'],
		['front', 'section'],
	],
	[['side'], ['front'], ['tip', 'section']],
	[['side'], ['front'], ['tip'], ['section']],
];

/** Free space between parts: less where there is little. */
const gapOf = (space: LineDrawingSpace): number => Math.max(10, Math.min(22, space.width / 25));
const BORDER = 10;
/** Free space above the scale bar. */
const BAR_ABOVE = 20;
/** The scale bar takes at most this share of the width. */
const BAR = 0.3;

interface Box {
	min: readonly [number, number];
	max: readonly [number, number];
}

/**
 * Places the views of a drawing in a space, all at the one scale that fits, in the arrangement that lets this scale be
 * largest. Side and front stand at one height; the tip view stands under the side view where they share a column.
 */
export function lineDrawingLayout(drawing: LineDrawing, space: LineDrawingSpace): LineDrawingLayout {
	let best = { arrangement: ARRANGEMENTS[0], scale: 0 };
	for (const arrangement of ARRANGEMENTS) {
		const scale = largestScale(drawing, arrangement, space);
		if (scale > best.scale * 1.04) best = { arrangement, scale };
	}
	return place(drawing, best.arrangement, space, best.scale);
}

/** A part's box, widened so that side and front share their heights, side and tip their widths: they line up exactly. */
function boxOf(drawing: LineDrawing, part: DrawnPart): Box | null {
	const { side, front, tip } = drawing;
	if (part === 'section') return drawing.section;
	const { min, max } = drawing[part];
	const across = part === 'front' ? [front] : [side, tip];
	const upright = part === 'tip' ? [tip] : [side, front];
	return {
		min: [
			Math.min(min[0], ...across.map((v) => v.min[0])),
			Math.min(min[1], ...upright.map((v) => v.min[1])),
		],
		max: [
			Math.max(max[0], ...across.map((v) => v.max[0])),
			Math.max(max[1], ...upright.map((v) => v.max[1])),
		],
	};
}

function sizes(
	drawing: LineDrawing,
	arrangement: Arrangement,
	space: LineDrawingSpace,
	scale: number,
): { columns: { width: number; height: number; parts: { part: DrawnPart; box: Box }[] }[]; rows: number[] } {
	const wanted = arrangement.map((column) =>
		column.flatMap((part) => {
			const box = boxOf(drawing, part);
			return box ? [{ part, box }] : [];
		}),
	);
	// rows are as high as their highest part, except where a column stands alone beside the tall views
	const gridded = arrangement.every((column) => column.length === arrangement[0].length);
	const rows: number[] = [];
	const columns = wanted
		.filter((parts) => parts.length > 0)
		.map((parts) => {
			let width = 0;
			let height = 0;
			parts.forEach(({ part, box }, i) => {
				width = Math.max(width, (box.max[0] - box.min[0]) * scale, space.leastWidth?.[part] ?? 0);
				const own = (box.max[1] - box.min[1]) * scale;
				if (gridded) rows[i] = Math.max(rows[i] ?? 0, own);
				height += own + labelHeight(space) + (i > 0 ? gapOf(space) : 0);
			});
			return { width, height, parts };
		});
	return { columns, rows };
}

function extent(
	drawing: LineDrawing,
	arrangement: Arrangement,
	space: LineDrawingSpace,
	scale: number,
): { width: number; height: number } {
	const { columns, rows } = sizes(drawing, arrangement, space, scale);
	const width = columns.reduce((sum, column) => sum + column.width, gapOf(space) * (columns.length - 1));
	const height =
		rows.length > 0
			? rows.reduce((sum, row) => sum + row + labelHeight(space), gapOf(space) * (rows.length - 1))
			: Math.max(0, ...columns.map((column) => column.height));
	return { width, height };
}

const barHeight = (space: LineDrawingSpace): number => BAR_ABOVE + space.lineHeight;
/** Height of the words under a part with the space above them. */
const labelHeight = (space: LineDrawingSpace): number =>
	space.labelLines > 0 ? (space.labelLines + 0.3) * space.lineHeight : 0;

function largestScale(drawing: LineDrawing, arrangement: Arrangement, space: LineDrawingSpace): number {
	const fits = (scale: number): boolean => {
		const { width, height } = extent(drawing, arrangement, space, scale);
		return width <= space.width - 2 * BORDER && height <= space.height - 2 * BORDER - barHeight(space);
	};
	let [low, high] = [0, 1];
	if (!fits(0)) return 0;
	while (fits(high) && high < 1e6) high *= 2;
	for (let i = 0; i < 40; i++) {
		const middle = (low + high) / 2;
		if (fits(middle)) low = middle;
		else high = middle;
	}
	return low;
}

function place(
	drawing: LineDrawing,
	arrangement: Arrangement,
	space: LineDrawingSpace,
	scale: number,
): LineDrawingLayout {
	const { columns, rows } = sizes(drawing, arrangement, space, scale);
	const { width, height } = extent(drawing, arrangement, space, scale);
	const top = (space.height - barHeight(space) - height) / 2;
	const parts: PlacedPart[] = [];
	let left = (space.width - width) / 2;
	const barX = left;
	for (const column of columns) {
		const middle = left + column.width / 2;
		// a column of its own stands at the foot of the tall views, all baselines level
		let y = rows.length > 0 ? top : top + height - column.height;
		column.parts.forEach(({ part, box }, i) => {
			const own = (box.max[1] - box.min[1]) * scale;
			const row = rows[i] ?? own;
			parts.push({
				part,
				x: middle - ((box.min[0] + box.max[0]) / 2) * scale,
				y: y + (row - own) / 2 + box.max[1] * scale,
				labelX: middle,
				labelY: y + row + space.lineHeight,
			});
			y += row + labelHeight(space) + gapOf(space);
		});
		left += column.width + gapOf(space);
	}
	const length_mm = scale > 0 ? barLength((space.width * BAR) / scale) : 0;
	const y = top + height + barHeight(space) - space.lineHeight * 0.7;
	// one order of reading, however they stand
	parts.sort((a, b) => PARTS.indexOf(a.part) - PARTS.indexOf(b.part));
	return { pxPerMm: scale, parts, bar: { x: barX, y, length_mm, length_px: length_mm * scale } };
}

/** The largest of 1, 2 or 5 times a power of ten up to `longest`. */
function barLength(longest: number): number {
	const decade = 10 ** Math.floor(Math.log10(longest) + 1e-9);
	return decade * ([5, 2].find((step) => step * decade <= longest * (1 + 1e-9)) ?? 1);
}
