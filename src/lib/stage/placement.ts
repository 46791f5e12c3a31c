/** Where a turned tooth and its shadow lie, before anything is drawn. */
import { Matrix4, Vector3 } from 'three';
import type { Pose, ShapeRef } from './api';
import type { CentreLine } from './centreLine';
import { rotationOf } from './stand';
import { EYE_radii, type Box } from './viewport';

/** How far the shadow falls: 1 would be the lamp's own slope, which throws it too far to belong to the tooth. */
const SHADOW_REACH = 0.5;
/** Steeper slopes than this, from a lower lamp, do not throw it farther. */
const LONGEST_SLOPE = 2.6;

export interface Placement {
	/** tooth frame to a frame at the middle of its bounds, x right, y up, z to the viewer, mm */
	turn: Matrix4;
	/** centre and radius of each of the shadow's discs on the felt, mm; none without a shadow */
	chain: Vector3[];
	/** softness of the shadow's edge, mm */
	blur_mm: number;
	/** what the shadow covers, mm, y up */
	shadow: Box;
	/** what the tooth covers, CSS px from the middle of the view, y down */
	tooth: Box;
	/** what tooth and shadow cover, likewise */
	need: Box;
}

/** Pure: the same shape, pose and scale give the same placement. */
export const place = (
	bounds: ShapeRef['bounds'],
	/** null = no shadow */
	centreLine: CentreLine | null,
	pose: Pose,
	pxPerMm: number,
	/** unit, from the tooth towards the lamp, x right, y up, z to the viewer */
	lampDir: readonly [number, number, number],
): Placement => {
	const { min, max } = bounds;
	const mid = [0, 1, 2].map((i) => (min[i] + max[i]) / 2);
	const half = new Vector3(...[0, 1, 2].map((i) => (max[i] - min[i]) / 2));
	const turn = rotationOf(pose);
	// half-size of the turned bounds, and how much nearness magnifies what leans towards the eye
	const e = turn.elements;
	const reach = (row: number) =>
		Math.abs(e[row]) * half.x + Math.abs(e[4 + row]) * half.y + Math.abs(e[8 + row]) * half.z;
	const distance = EYE_radii * half.length();
	const near = distance / (distance - reach(2));
	const [across, up] = [reach(0) * near, reach(1) * near];
	turn.multiply(new Matrix4().makeTranslation(-mid[0], -mid[1], -mid[2]));

	const points = centreLine?.points ?? new Float32Array();
	const discs = points.length / 4;
	let widest = 0;
	for (let i = 0; i < discs; i++) widest = Math.max(widest, points[i * 4 + 3]);
	const blur_mm = 0.75 * widest + 0.02 * half.length();
	const flat = Math.hypot(lampDir[0], lampDir[1]);
	const slope = flat / Math.max(1e-6, lampDir[2]);
	// towards its limit without a kink, so that the shadow follows a lamp that sinks
	const throw_ = LONGEST_SLOPE * Math.tanh(slope / LONGEST_SLOPE);
	const [castX, castY] =
		flat > 1e-6 ? [-(lampDir[0] / flat) * throw_, -(lampDir[1] / flat) * throw_] : [0, 0];
	const shadow: Box = { left: Infinity, right: -Infinity, top: -Infinity, bottom: Infinity };
	const chain: Vector3[] = [];
	for (let i = 0; i < discs; i++) {
		const point = new Vector3().fromArray(points, i * 4).applyMatrix4(turn);
		const r = points[i * 4 + 3] * 0.9;
		// where the lamp's ray through this point meets the felt behind the tooth
		const drop = Math.max(0.2 * widest, point.z * 0.35 + 1.15 * widest) * SHADOW_REACH;
		const disc = new Vector3(point.x + castX * drop, point.y + castY * drop, r);
		chain.push(disc);
		shadow.left = Math.min(shadow.left, disc.x - r - blur_mm);
		shadow.right = Math.max(shadow.right, disc.x + r + blur_mm);
		shadow.bottom = Math.min(shadow.bottom, disc.y - r - blur_mm);
		shadow.top = Math.max(shadow.top, disc.y + r + blur_mm);
	}
	return {
		turn,
		chain,
		blur_mm,
		shadow,
		tooth: {
			left: -across * pxPerMm - 1,
			right: across * pxPerMm + 1,
			top: -up * pxPerMm - 1,
			bottom: up * pxPerMm + 1,
		},
		need: {
			left: Math.min(-across, shadow.left) * pxPerMm - 1,
			right: Math.max(across, shadow.right) * pxPerMm + 1,
			top: Math.min(-up, -shadow.top) * pxPerMm - 1,
			bottom: Math.max(up, -shadow.bottom) * pxPerMm + 1,
		},
	};
};
