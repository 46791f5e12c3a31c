import { boxAngle, type CrownShape } from './crownShape';
import { shareOut } from './columns';
import type { ToothForm } from './form';
import { nearestColumn, type Serration } from './relief';
import { fullnessOf } from './tipProfile';

/** Depths of the crown's sections below the tip, and the notches of each cutting edge. */
export interface CrownRows {
	/** rising, the last one is the base; the tip itself (0) is left out; mm */
	depths_mm: number[];
	serrations: (Serration | null)[];
}

export interface RowPlan {
	/** sections along an evenly sampled crown, more or less */
	along: number;
	/** rows that the mesh can give to serrations; 0 = leave edges smooth */
	serratedRows: number;
}

/** Fewest and most rows to a denticle. */
export const ROWS_PER_DENTICLE = { min: 4, max: 6 } as const;

/** Serrations are counted per this length of edge, mm. */
const COUNTED_PER_MM = 5;

export function crownRows(form: ToothForm, shape: CrownShape, plan: RowPlan): CrownRows {
	const { length_mm } = shape;
	const bluntness = Math.max(form.tipRadius_mm, shape.tipEnds_mm * 0.5, 0.004 * length_mm);
	const coarsest = length_mm / plan.along;
	const coarseness = Math.max(1, 50 / plan.along);
	const finest = Math.min(0.13 * coarseness * bluntness, coarsest);
	// rows lie closer towards the tip; measured along the meridian, not along the axis
	const wide = 0.25 * (form.baseLength_mm + form.baseWidth_mm);
	const dome = Math.max(0, fullnessOf(form) - 1);
	const natural = Math.max(bluntness, dome * dome * ((wide * wide) / length_mm));
	const plainDensity = (u: number): number => {
		const spacing = Math.min(coarsest, Math.max(finest, 0.13 * coarseness * natural) + 0.1 * coarseness * u);
		const nearTip = u < natural ? Math.sqrt(natural / Math.max(u, natural * 0.004)) : 1;
		return Math.max(1, nearTip * 0.9) / Math.min(spacing, coarsest * 1.2);
	};

	const serrated = form.carinae
		.map((carina, index) => ({ carina, index, per5mm: carina.serrationsPer5mm ?? 0 }))
		.filter((edge) => edge.per5mm > 0 && plan.serratedRows > 0)
		.map((edge) => {
			const column = nearestColumn(shape.columns, boxAngle(edge.carina.where, form));
			const lowest_mm = length_mm * (1 - edge.carina.from);
			return { ...edge, lowest_mm, phase: denticlePhase(shape, column, edge.per5mm / COUNTED_PER_MM) };
		});

	let depths_mm: number[];
	if (serrated.length === 0) {
		depths_mm = rootSpaced(plainDensity, length_mm);
	} else {
		const leading = serrated.reduce((a, b) => (b.phase(b.lowest_mm) > a.phase(a.lowest_mm) ? b : a));
		const top = Math.min(leading.lowest_mm * 0.5, shape.tipEnds_mm + 0.01 * length_mm);
		const first = Math.ceil(leading.phase(top));
		const last = Math.floor(leading.phase(leading.lowest_mm));
		const per = Math.min(
			ROWS_PER_DENTICLE.max,
			Math.max(ROWS_PER_DENTICLE.min, Math.floor(plan.serratedRows / Math.max(1, last - first))),
		);
		const serratedDepths = invertAt(leading.phase, first, last, per, leading.lowest_mm);
		const start = serratedDepths[0];
		const end = serratedDepths[serratedDepths.length - 1];
		depths_mm = [...rootSpaced(plainDensity, start), ...serratedDepths.slice(1)];
		if (end < length_mm - 1e-6 * length_mm)
			depths_mm.push(...shareOut(plainDensity, end, length_mm).slice(1));
	}
	const serrations: (Serration | null)[] = form.carinae.map((_, i) => {
		const edge = serrated.find((s) => s.index === i);
		if (!edge) return null;
		return { notch: (u) => Math.cos(Math.PI * edge.phase(u)) ** 4 };
	});
	return { depths_mm, serrations };
}

/** Rows from the tip (left out) to `end`; worked out over the square root of depth, so that the tip is well covered. */
function rootSpaced(density: (u: number) => number, end: number): number[] {
	return shareOut((w) => density(w * w) * 2 * w, 0, Math.sqrt(end), 3)
		.slice(1)
		.map((w) => w * w);
}

/** Denticles passed from the tip down to depth `u` along one edge (fractions count). */
function denticlePhase(shape: CrownShape, column: number, perMm: number): (u_mm: number) => number {
	const steps = 300;
	const passed = new Float64Array(steps + 1);
	const step = shape.length_mm / steps;
	let before: [number, number, number] | undefined;
	for (let i = 0; i <= steps; i++) {
		const u = i * step;
		const { centre, distal, labial } = shape.line.at(shape.length_mm - u);
		const [x, z] = shape.sectionPoint(column, u);
		const here: [number, number, number] = [
			centre[0] + x * distal[0] + z * labial[0],
			centre[1] + x * distal[1] + z * labial[1],
			centre[2] + x * distal[2] + z * labial[2],
		];
		if (before)
			passed[i] =
				passed[i - 1] + perMm * Math.hypot(here[0] - before[0], here[1] - before[1], here[2] - before[2]);
		before = here;
	}
	return (u) => {
		const i = Math.min(steps - 1, Math.max(0, Math.floor(u / step)));
		return passed[i] + (passed[i + 1] - passed[i]) * (u / step - i);
	};
}

/** Depths at which a rising phase takes the values first, first + 1/per, ..., last. */
function invertAt(
	phase: (u: number) => number,
	first: number,
	last: number,
	per: number,
	end: number,
): number[] {
	const depths: number[] = [];
	for (let k = 0; k <= Math.max(0, last - first) * per; k++) {
		const aim = first + k / per;
		let [low, high] = [depths.at(-1) ?? 0, end];
		for (let i = 0; i < 40; i++) {
			const middle = (low + high) / 2;
			if (phase(middle) < aim) low = middle;
			else high = middle;
		}
		depths.push((low + high) / 2);
	}
	return depths;
}

/** Denticles along one whole edge of a straight crown: what `checkForm` holds against the limit. */
export function denticleCount(form: ToothForm, from: number, per5mm: number): number {
	const edge_mm = Math.hypot(form.crownHeight_mm, form.baseLength_mm / 2) * (1 - from);
	return (edge_mm / COUNTED_PER_MM) * per5mm;
}
