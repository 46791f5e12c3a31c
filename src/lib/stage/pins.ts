/** Between points on a tooth and places in its view. Pure: tooth frame in mm, places in CSS px of the element. */
import { Matrix4, Vector3 } from 'three';
import type { Vec3 } from '../domain/vec3';
import type { Pose, ShapeRef } from './api';
import { extents } from './fit';
import { wrapYaw } from './pose';
import { rotationOf } from './stand';
import { EYE_radii } from './viewport';

/** Everything that says where a point of the tooth appears in a view. */
export interface Lens {
	/** tooth frame to a frame at the middle of the tooth's bounds, x right, y up, z to the viewer, mm */
	turn: Matrix4;
	/** from the eye to that middle, mm */
	distance_mm: number;
	/** at that middle */
	pxPerMm: number;
	width_px: number;
	height_px: number;
}

export interface Ray {
	origin: Vec3;
	/** unit */
	direction: Vec3;
}

const array = ({ x, y, z }: Vector3): Vec3 => [x, y, z];

/** The same picture that the painter draws: see viewport.ts and placement.ts. */
export const lensOf = (
	bounds: ShapeRef['bounds'],
	pose: Pose,
	pxPerMm: number,
	width_px: number,
	height_px: number,
): Lens => {
	const { min, max } = bounds;
	const turn = rotationOf(pose).multiply(
		new Matrix4().makeTranslation(-(min[0] + max[0]) / 2, -(min[1] + max[1]) / 2, -(min[2] + max[2]) / 2),
	);
	return { turn, distance_mm: EYE_radii * extents(bounds).radius_mm, pxPerMm, width_px, height_px };
};

/** The line of sight through a place in the view, in the tooth frame. */
export const rayAt = (lens: Lens, x_px: number, y_px: number): Ray => {
	const back = lens.turn.clone().invert();
	const eye = new Vector3(0, 0, lens.distance_mm);
	const seen = new Vector3(
		(x_px - lens.width_px / 2) / lens.pxPerMm,
		(lens.height_px / 2 - y_px) / lens.pxPerMm,
		0,
	);
	const direction = seen.sub(eye).transformDirection(back);
	return { origin: array(eye.applyMatrix4(back)), direction: array(direction) };
};

/** Where a point appears; null when it is not before the eye. */
export const placeInView = (lens: Lens, point: Vec3): { x: number; y: number } | null => {
	const p = new Vector3(...point).applyMatrix4(lens.turn);
	const depth = lens.distance_mm - p.z;
	if (!(depth > 0)) return null;
	const px = (lens.distance_mm / depth) * lens.pxPerMm;
	return { x: lens.width_px / 2 + p.x * px, y: lens.height_px / 2 - p.y * px };
};

/** Where the eye is, in the tooth frame. */
export const eyeOf = (lens: Lens): Vec3 =>
	array(new Vector3(0, 0, lens.distance_mm).applyMatrix4(lens.turn.clone().invert()));

/** The pose in which this direction of the tooth frame points at the viewer; stand and zoom stay. */
export const facing = (pose: Pose, direction: Vec3): Pose => {
	const stood = rotationOf({ ...pose, yaw_deg: 0, tilt_deg: 0 });
	const d = new Vector3(...direction).transformDirection(stood);
	// straight up or down any yaw will do: keep the one there is
	const across = Math.hypot(d.x, d.z);
	const yaw_deg = across > 1e-6 ? wrapYaw((-Math.atan2(d.x, d.z) * 180) / Math.PI) : pose.yaw_deg;
	return { ...pose, yaw_deg, tilt_deg: (Math.atan2(d.y, across) * 180) / Math.PI };
};

/**
 * A step along the surface as seen: `right_mm` to the viewer's right and `up_mm` upwards, laid into the plane
 * square to `normal`. Where that plane is seen edge-on the step keeps the direction that is seen.
 */
export const stepAlong = (lens: Lens, point: Vec3, normal: Vec3, right_mm: number, up_mm: number): Vec3 => {
	const wanted = new Vector3(right_mm, up_mm, 0);
	const length = wanted.length();
	const start = new Vector3(...point);
	if (!(length > 0)) return array(start);
	const step = wanted.transformDirection(lens.turn.clone().invert());
	const n = new Vector3(...normal);
	const flat = step.clone().addScaledVector(n, -step.dot(n));
	const along = flat.length() > EDGE_ON ? flat.normalize() : step;
	return array(start.addScaledVector(along, length));
};

/** Share of a step that must be left in the plane for its direction to mean anything. */
const EDGE_ON = 0.2;
