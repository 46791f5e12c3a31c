import type { Region } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';
import type { CrownShape } from './crownShape';
import type { PulpForm, ToothForm } from './form';
import type { RootWall } from './rootWall';
import type { Point2 } from './sectionOutline';
import type { Ring } from './skin';
import { lerp, smoothstep } from './smooth';

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
}

/** A growing tooth is a thin shell even where the form says nothing of its pulp. */
const OPEN_PULP = { reach: 0.3, opening: 0.82 } as const;
/** Part of the wall that the cavity may never take where a pit has thinned it. */
const PIT_WALL = 0.78;
/** A pit shows as one where it is at least this strong. */
const PIT_SHOWS = 0.1;

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
		const count = Math.max(6, Math.round(wall.length_mm / plan.spacing_mm));
		const step = Math.min(0.006 * (form.baseLength_mm + form.baseWidth_mm), wall.length_mm / 40);
		for (let k = 0; k <= count; k++) {
			// close to the cervix and to the end rings lie closer
			const v = k / count;
			const eased = v - 0.06 * Math.sin(2 * Math.PI * v);
			rings.push(
				ring(
					'root',
					(j) => {
						const y = lerp(-step, rim(j), eased);
						const [x, z] = outer(j, y);
						return [x, y, z];
					},
					true,
				),
			);
		}
		rings[rings.length - 1].below = endRegion;
	}

	// the end: a narrow rounded lip, then either a closed base or the cavity
	const round_mm = wall ? Math.min(0.03 * form.baseWidth_mm, wall.length_mm / 30) : 0;
	const lipAt = (j: number, share: number, drop: number): [number, number, number] => {
		const y = rim(j);
		const [x, z] = outer(j, y);
		return [x * share, y - drop, z * share];
	};
	if (!cavity) return { rings, pole: closeBase() };
	const { opening } = cavity;
	rings.push(ring(endRegion, (j) => lipAt(j, lerp(1, opening, 0.12), round_mm * 0.8), true));
	if (opening < 0.8) rings.push(ring(endRegion, (j) => lipAt(j, lerp(1, opening, 0.55), round_mm), true));
	rings.push(ring(endRegion, (j) => lipAt(j, lerp(1, opening, 0.9), round_mm * 0.7), true));

	const top = cavity.height_mm;
	const count = plan.cavityRings;
	for (let k = 0; k < count; k++) {
		const v = Math.sin((Math.PI / 2) * (k / count));
		const narrowing = (1 - v * v) ** 0.6;
		rings.push(
			ring('pulp', (j) => {
				const y = lerp(rim(j), top, v);
				if (y >= 0) {
					const arc = shape.line.heightToArc(y);
					const [x, z] = shape.sectionPoint(j, shape.length_mm - arc);
					const { centre, distal, labial } = shape.line.at(arc);
					const [px, pz] = [x * opening * narrowing, z * opening * narrowing];
					return [
						centre[0] + px * distal[0] + pz * labial[0],
						centre[1] + px * distal[1] + pz * labial[1],
						centre[2] + px * distal[2] + pz * labial[2],
					];
				}
				const [x, z] = wall!.smoothPoint(j, y);
				const eaten = wall!.pitted(j, y) > 0 ? PIT_WALL : 1;
				const share = Math.min(eaten, opening * narrowing);
				return [x * share, y, z * share];
			}),
		);
	}
	return { rings, pole: shape.line.at(shape.line.heightToArc(top)).centre };

	/** Closes the end without a cavity: flat under a bare crown, rounded under a root, hollow where resorbed. */
	function closeBase(): Vec3 {
		let mean = 0;
		for (let j = 0; j < n; j++) mean += rim(j) / n;
		const size = 0.25 * (form.baseLength_mm + form.baseWidth_mm);
		const depth = !wall ? 0 : resorbed ? 0.45 * wall.length_mm : -0.3 * size;
		const shares = [0.985, 0.93, 0.85, 0.72, 0.56, 0.38, 0.18];
		const region: Region = !wall ? 'dentine' : resorbed ? 'pit' : 'root';
		if (rings.length > 0 && resorbed) rings[rings.length - 1].below = 'dentine';
		for (const share of shares) {
			const hollow = resorbed ? smoothstep(0, 1, 1 - share) * 1.0 : Math.sqrt(1 - share * share);
			rings.push(
				ring(share > 0.9 && resorbed ? 'dentine' : region, (j) => {
					const [x, z] = outer(j, rim(j));
					return [x * share, lerp(mean, rim(j), share ** 2) + depth * hollow, z * share];
				}),
			);
		}
		return [0, mean + depth, 0];
	}
}
