import { boxAngle, isThreeEdged } from './crownShape';
import type { ToothForm } from './form';
import { ridgeAngles, ridgeGap } from './relief';
import { THREE_EDGED_ENDS } from './sectionOutline';
import { angleBetween } from './smooth';

const TURN = 2 * Math.PI;
/** Columns closer than this are one, radians. */
const SAME = 0.006;

/** How many columns a piece of the circumference gets. */
export interface ColumnPlan {
	/** columns of a plain section */
	plain: number;
	/** columns added round each cutting edge */
	perEdge: number;
	/** columns from one ridge to the next */
	perRidge: number;
}

/**
 * Section angles (box radians, rising, first 0) at which every section is sampled: the four sides and every cutting
 * edge and ridge have a column of their own, with more columns close to edges.
 */
export function columnAngles(form: ToothForm, plan: ColumnPlan): number[] {
	const edges = form.carinae.map((carina) => boxAngle(carina.where, form));
	const creased = form.sections.some((stop) => stop.shape === 'blade' || stop.shape === 'triangular');
	const ridges = ridgeAngles(form);
	const spread = (5 * Math.PI) / 180;
	const gap = ridgeGap(ridges);
	// corners of the section that no edge already covers
	const creases = [0, Math.PI, 1.5 * Math.PI].filter(
		(crease) => creased && edges.every((edge) => Math.abs(angleBetween(edge, crease)) > spread),
	);
	const density = (angle: number): number => {
		let d = plan.plain / TURN;
		for (const edge of edges)
			d += plan.perEdge / (Math.PI * spread * (1 + (angleBetween(angle, edge) / spread) ** 2));
		for (const crease of creases) {
			const wide = 2 * spread;
			d += (plan.perEdge * 0.5) / (Math.PI * wide * (1 + (angleBetween(angle, crease) / wide) ** 2));
		}
		const nearRidge = ridges.some((ridge) => Math.abs(angleBetween(angle, ridge.angle_rad)) <= gap * 0.6);
		return nearRidge ? Math.max(d, plan.perRidge / gap) : d;
	};

	const anchors: number[] = [];
	const ends = isThreeEdged(form) ? THREE_EDGED_ENDS : [];
	const wanted = [
		...edges,
		...ends,
		0,
		Math.PI / 2,
		Math.PI,
		1.5 * Math.PI,
		...ridges.map((r) => r.angle_rad),
	];
	for (const angle of wanted)
		if (anchors.every((a) => Math.abs(angleBetween(a, angle)) > SAME)) anchors.push(angle % TURN);
	anchors.sort((a, b) => a - b);

	const angles: number[] = [];
	anchors.forEach((from, i) => {
		const to = i + 1 < anchors.length ? anchors[i + 1] : anchors[0] + TURN;
		angles.push(...shareOut(density, from, to).slice(0, -1));
	});
	return angles.map((a) => (a >= TURN ? a - TURN : a)).sort((a, b) => a - b);
}

/** Points from `from` to `to` (both included) spaced by a density, at least one step. */
export function shareOut(density: (x: number) => number, from: number, to: number, atLeast = 1): number[] {
	const samples = 160;
	const sums = new Float64Array(samples + 1);
	const step = (to - from) / samples;
	for (let i = 0; i < samples; i++) sums[i + 1] = sums[i] + density(from + (i + 0.5) * step) * step;
	const count = Math.max(atLeast, Math.round(sums[samples]));
	const points = [from];
	let k = 0;
	for (let i = 1; i < count; i++) {
		const aim = (sums[samples] * i) / count;
		while (sums[k + 1] < aim) k++;
		points.push(from + (k + (aim - sums[k]) / (sums[k + 1] - sums[k])) * step);
	}
	points.push(to);
	return points;
}
