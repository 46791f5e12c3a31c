import type { Region } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';
import type { CrownShape } from './crownShape';
import type { PulpForm, ToothForm } from './form';
import type { RootWall } from './rootWall';
import type { Point2 } from './sectionOutline';
import type { Ring } from './skin';
import { lerp } from './smooth';

/** Everything below the crown's base ring: root wall, end, cavity. */
export interface LowerPart {
	rings: Ring[];
	/** the last point: middle of the closed base, or top of the cavity */
	pole: Vec3;
}

export interface LowerPlan {
	/** distance between rings on the root, mm */
	spacing_mm: number;
	/** rings of the cavity's wall */
	cavityRings: number;
	/** fewest rings wherever there is a choice */
	coarse: boolean;
}

/** A growing tooth is a thin shell even where the form says nothing of its pulp. */
const OPEN_PULP = { reach: 0.3, opening: 0.82 } as const;
/** Part of the wall that the cavity may never take where a pit has thinned it. */
const PIT_WALL = 0.78;
/** How far the middle of a resorbed end is hollowed, over the stub's length. */
const HOLLOW = 0.45;
/** A pit shows as one where it is at least this strong. */
const PIT_SHOWS = 0.16;

/** The cavity of a form, or null when it is solid. */
export function cavityOf(form: ToothForm): PulpForm | null {
	if (form.pulp) return form.pulp;
	if (form.root.state !== 'open') return null;
	return { height_mm: OPEN_PULP.reach * form.crownHeight_mm, opening: OPEN_PULP.opening };
}

export function lowerRings(
	form: ToothForm,
	shape: CrownShape,
	wall: RootWall | null,
	plan: LowerPlan,
): LowerPart {
	const n = shape.columns.length;
	const rings: Ring[] = [];
	const base = shape.columns.map((_, j) => shape.sectionPoint(j, shape.length_mm));
	const cavity = cavityOf(form);
	const solidRoot = form.root.state === 'full' && !cavity;
	const resorbed = form.root.state === 'resorbed';
	const endRegion: Region = form.root.state === 'full' ? 'root' : 'dentine';
	const tagPit = (heights: (j: number) => number): (Region | null)[] | undefined =>
		wall && resorbed
			? shape.columns.map((_, j) => (wall.pitted(j, heights(j)) > PIT_SHOWS ? 'pit' : null))
			: undefined;
	const ring = (
		below: Region,
		at: (j: number) => readonly [number, number, number],
		tagged = false,
	): Ring => {
		const points = new Float64Array(3 * n);
		for (let j = 0; j < n; j++) points.set(at(j), 3 * j);
		return { points, below, tags: tagged ? tagPit((j) => points[3 * j + 1]) : undefined };
	};
	const rim = (j: number): number => wall?.endHeight_mm(j) ?? 0;
	const outer = (j: number, y: number): Point2 => wall?.point(j, y) ?? base[j];

	if (wall) {
		const count = Math.max(
			resorbed && !plan.coarse ? 18 : 6,
			Math.min(30, Math.round(wall.length_mm / plan.spacing_mm)),
		);
		const step = Math.min(0.006 * (form.baseLength_mm + form.baseWidth_mm), wall.length_mm / 40);
		for (let k = 0; k <= count; k++) {
			// close to the cervix rings lie closer, and at a rounded end much closer
			const v = k / count;
			const eased = solidRoot ? 1 - (1 - v * 0.995) ** 1.55 : v - 0.06 * Math.sin(2 * Math.PI * v);
			const at = (j: number): [number, number, number] => {
				const y = lerp(-step, rim(j), eased);
				const [x, z] = outer(j, y);
				return [x, y, z];
			};
			rings.push(ring('root', at, true));
		}
		if (!solidRoot) rings[rings.length - 1].below = endRegion;
	}
	if (solidRoot && wall) return { rings, pole: [0, -wall.length_mm, 0] };

	let mean = 0;
	for (let j = 0; j < n; j++) mean += rim(j) / n;
	// deep in a hollow without a cavity the rim's unevenness is lost
	const ratios = base.map(([x, z], j) => Math.hypot(...outer(j, rim(j))) / Math.hypot(x, z));
	const even = Math.min(ratios.reduce((a, b) => a + b, 0) / n, 1.9 * Math.min(...ratios));
	/** a point of the end face: `share` of the outer radius, on a surface that evens out and hollows inwards */
	const endAt = (j: number, share: number, innermost: number): [number, number, number] => {
		const inwards = (1 - share) / (1 - innermost);
		const [ox, oz] = outer(j, rim(j));
		const evened = cavity ? 0 : inwards;
		const [x, z] = [lerp(ox, base[j][0] * even, evened), lerp(oz, base[j][1] * even, evened)];
		const hollow = resorbed && wall ? HOLLOW * wall.length_mm * inwards * (1 - innermost) : 0;
		// a broken end is flat, an end in life has a narrow rounded lip
		const lip = wall
			? 4 * inwards * (1 - inwards) * Math.min(0.02 * form.baseWidth_mm, wall.length_mm / 40)
			: 0;
		return [x * share, lerp(rim(j), mean, Math.min(1, 1.6 * inwards)) + hollow - lip, z * share];
	};

	if (!cavity) {
		const shares = resorbed ? [0.97, 0.9, 0.8, 0.68, 0.54, 0.38, 0.2] : [0.985, 0.85, 0.6, 0.3];
		for (const share of shares)
			rings.push(ring(resorbed && share < 0.9 ? 'pit' : 'dentine', (j) => endAt(j, share, 0)));
		return { rings, pole: [0, mean + (resorbed && wall ? HOLLOW * wall.length_mm : 0), 0] };
	}
	const { opening, height_mm: top } = cavity;
	for (const inwards of plan.coarse ? [0.1, 0.6] : [0.08, 0.3, 0.55, 0.8, 0.94])
		rings.push(ring(endRegion, (j) => endAt(j, lerp(1, opening, inwards), opening), true));

	/** section point of the outside (without relief and folds) at height y */
	const outside = (j: number, y: number): Point2 => {
		if (y < 0 && wall) return wall.smoothPoint(j, Math.max(y, rim(j)));
		return shape.sectionPoint(j, shape.length_mm - Math.max(0, shape.line.heightToArc(y)));
	};
	const count = plan.cavityRings;
	for (let k = 0; k < count; k++) {
		const v = Math.sin((Math.PI / 2) * (k / count));
		const narrowing = (1 - v * v) ** 0.6;
		const at = (j: number): readonly [number, number, number] => {
			const mouth = endAt(j, opening, opening);
			if (k === 0) return mouth;
			const y = lerp(mouth[1], top, v);
			const [x, z] = outside(j, y);
			// the wall between two rings is straight: it must clear every waist between them
			const reach = ((top - mouth[1]) / count) * 1.6;
			let room = Math.hypot(x, z);
			for (const near of [-1, -0.5, 0.5, 1])
				room = Math.min(room, Math.hypot(...outside(j, Math.max(mouth[1], Math.min(top, y + near * reach)))));
			const eaten = wall && wall.pitted(j, y) > 0 ? PIT_WALL : 1;
			const share = (Math.min(eaten, opening * narrowing) * room) / Math.max(1e-9, Math.hypot(x, z));
			const { centre, distal, labial } = shape.line.at(shape.line.heightToArc(y));
			const [px, pz] = [x * share, z * share];
			return [
				centre[0] + px * distal[0] + pz * labial[0],
				centre[1] + px * distal[1] + pz * labial[1],
				centre[2] + px * distal[2] + pz * labial[2],
			];
		};
		rings.push(ring('pulp', at));
	}
	return { rings, pole: shape.line.at(shape.line.heightToArc(top)).centre };
}
