import { OFF_AXIS_LOSS } from './dailyLines';
import { normalFrom } from '../random/seededRandom';

/** A slice of dentine with its daily lines, made up to a true age, so that whoever counts right gets that age. */
export interface DentineSlice {
	/** days = lines */
	age_d: number;
	/** mean width of a line along the axis, um */
	lineWidth_um: number;
	/** distance of each line from the oldest dentine, along the axis, um, rising; length = age_d */
	lines_um: Float64Array;
	/** whole thickness along the axis, um: age_d * lineWidth_um */
	thickness_um: number;
	/** narrowest lines at the edge, as a loss of width 0 .. 0.36 */
	edgeLoss: number;
	/** lines that stand out: one in 11 to 13 (Gren & Lindgren 2013 saw such bands in marine reptiles) */
	strong: ReadonlySet<number>;
}

export interface SliceSpec {
	age_d: number;
	lineWidth_um: number;
	/** spread of the widths over their mean, 0 .. 0.3; an illustration; default 0.12 */
	irregularity?: number;
	/** default 0.36 */
	edgeLoss?: number;
}

/** Makes a slice; the same random numbers give the same slice. */
export function dentineSlice(spec: SliceSpec, random: () => number): DentineSlice {
	const { age_d, lineWidth_um, irregularity = 0.12, edgeLoss = OFF_AXIS_LOSS } = spec;
	const widths = Array.from({ length: age_d }, () =>
		Math.max(0.35, Math.min(1.65, 1 + irregularity * normalFrom(random))),
	);
	const scale = (age_d * lineWidth_um) / widths.reduce((sum, width) => sum + width, 0);
	const lines_um = new Float64Array(age_d);
	let at = 0;
	widths.forEach((width, i) => {
		at += width * scale;
		lines_um[i] = at;
	});
	const strong = new Set<number>();
	for (let i = 6; i < age_d; i += 11 + Math.floor(random() * 3)) strong.add(i);
	return { age_d, lineWidth_um, lines_um, thickness_um: at, edgeLoss, strong };
}

/** What is seen where a slice is cut or measured `offAxis` of the way from its axis (0) to its edge (1). */
export interface SliceCut {
	offAxis: number;
	/** lines along this cut, um */
	lines_um: Float64Array;
	/** mean width of a line here, um */
	lineWidth_um: number;
	/** age that comes out when the thickness along the axis is divided by the width measured here, days */
	seemingAge_d: number;
}

/** How wide lines are there over their width on the axis; 1 on it, 1 - loss at the edge. The curve between is ours. */
export const widthOffAxis = (slice: Pick<DentineSlice, 'edgeLoss'>, offAxis: number): number =>
	1 - slice.edgeLoss * offAxis * offAxis;

export function cutSlice(slice: DentineSlice, offAxis: number): SliceCut {
	const share = widthOffAxis(slice, offAxis);
	const lineWidth_um = slice.lineWidth_um * share;
	return {
		offAxis,
		lines_um: slice.lines_um.map((at) => at * share),
		lineWidth_um,
		seemingAge_d: slice.thickness_um / lineWidth_um,
	};
}

/** Lines between two places of a cut, um: those after `from` up to `to`. */
export function linesBetween(cut: Pick<SliceCut, 'lines_um'>, from_um: number, to_um: number): number {
	let count = 0;
	for (const at of cut.lines_um) if (at > from_um && at <= to_um) count++;
	return count;
}
