/** How a tooth stands in the view before yaw and tilt: square turns for looking at it from any side. */
import { Matrix4, Quaternion, Vector3 } from 'three';
import type { Pose, QuarterTurn, Quat, ShapeRef } from './api';

const DEGREE = Math.PI / 180;
const X = new Vector3(1, 0, 0);
const Y = new Vector3(0, 1, 0);
const Z = new Vector3(0, 0, 1);

const quaternion = (stand: Quat | undefined) => (stand ? new Quaternion(...stand) : new Quaternion());
const tuple = ({ x, y, z, w }: Quaternion): Quat => [x, y, z, w];

/** Tooth frame to the viewer's directions: x right, y up, z towards the eye. Without a translation. */
export const rotationOf = (pose: Pose): Matrix4 =>
	new Matrix4()
		.makeRotationX(pose.tilt_deg * DEGREE)
		.multiply(new Matrix4().makeRotationY(pose.yaw_deg * DEGREE))
		.multiply(new Matrix4().makeRotationFromQuaternion(quaternion(pose.stand)));

/** Between two stands by the shortest way, t from 0 to 1. */
export const betweenStands = (from: Quat | undefined, to: Quat | undefined, t: number): Quat | undefined =>
	from === to ? to : t >= 1 ? to : tuple(quaternion(from).slerp(quaternion(to), t));

/** The box round a box that has been turned to its stand, mm: what a view must make room for. */
export const standingBounds = (bounds: ShapeRef['bounds'], stand: Quat | undefined): ShapeRef['bounds'] => {
	if (!stand) return bounds;
	const e = new Matrix4().makeRotationFromQuaternion(quaternion(stand)).elements;
	const half = [0, 1, 2].map((i) => (bounds.max[i] - bounds.min[i]) / 2);
	const reach = (row: number) =>
		Math.abs(e[row]) * half[0] + Math.abs(e[4 + row]) * half[1] + Math.abs(e[8 + row]) * half[2];
	const [x, y, z] = [reach(0), reach(1), reach(2)];
	return { min: [-x, -y, -z], max: [x, y, z] };
};

/** The 24 ways in which a cube can stand on a table. */
const SQUARE: readonly Quaternion[] = (() => {
	const found: Quaternion[] = [];
	const quarter = (axis: Vector3, n: number) => new Quaternion().setFromAxisAngle(axis, n * 90 * DEGREE);
	for (let a = 0; a < 4; a++) {
		for (let b = 0; b < 4; b++) {
			for (let c = 0; c < 4; c++) {
				const q = quarter(Z, a).multiply(quarter(X, b)).multiply(quarter(Y, c));
				if (!found.some((other) => Math.abs(other.dot(q)) > 0.999)) found.push(q);
			}
		}
	}
	return found;
})();

/** Turns about the viewer's own axes. */
const TURNS: Readonly<Record<QuarterTurn, [axis: Vector3, angle_deg: number]>> = {
	left: [Z, 90],
	right: [Z, -90],
	over: [Z, 180],
	back: [Y, 180],
	'top-near': [X, 90],
	'top-far': [X, -90],
};

/** The pose after a square turn of what is seen: the nearest square way of standing, turned; yaw and tilt are then 0. */
export const quarterTurned = (pose: Pose, turn: QuarterTurn): Pose => {
	const seen = new Quaternion().setFromRotationMatrix(rotationOf(pose));
	let nearest = SQUARE[0];
	for (const q of SQUARE) if (Math.abs(q.dot(seen)) > Math.abs(nearest.dot(seen)) + 1e-9) nearest = q;
	const [axis, angle_deg] = TURNS[turn];
	const turned = new Quaternion().setFromAxisAngle(axis, angle_deg * DEGREE).multiply(nearest);
	return { yaw_deg: 0, tilt_deg: 0, zoom: pose.zoom, stand: tuple(turned) };
};
