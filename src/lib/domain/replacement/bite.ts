import type { TriMesh } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';

/**
 * How an opposing tooth meets a standing one. Frame: that of the standing tooth (y up its axis, +z its lip side, mm).
 * The opposing tooth hangs upside down on the lip side and slides down and outwards along a straight path; where both
 * touch, both wear, so that the facet comes to lie along the path (facets follow the movement of the jaw: common
 * practice, no source).
 */
export interface BiteSetup {
	/** angle between the path and the standing tooth's axis, degrees, 5 .. 60; the facet's angle */
	closing_deg: number;
	/** distance between the axes of the two teeth when the mouth is shut, mm */
	spacing_mm: number;
}

/** How deep the opposing tip comes when the mouth is shut: its height over the standing tooth's crown base, over crown height. */
export const SHUT_TIP = 0.22;

/** Direction in which the opposing tooth moves as the mouth shuts, unit. */
export function closingDirection(closing_deg: number): Vec3 {
	const angle = (closing_deg * Math.PI) / 180;
	return [0, -Math.cos(angle), Math.sin(angle)];
}

/** Unit vector square to the path, towards the opposing tooth. */
export function biteNormal(closing_deg: number): Vec3 {
	const angle = (closing_deg * Math.PI) / 180;
	return [0, Math.sin(angle), Math.cos(angle)];
}

/**
 * Where the opposing tooth is when the mouth is `open` (1 = so far that the tips have passed, 0 = shut): its mesh is
 * turned half round the x axis (x, -y, -z) and then moved by this.
 */
export function opposingMove(
	setup: BiteSetup,
	open: number,
	standingHeight_mm: number,
	opposingHeight_mm: number,
): Vec3 {
	const [, dy, dz] = closingDirection(setup.closing_deg);
	const back = (open * standingHeight_mm * (1.25 - SHUT_TIP)) / -dy;
	return [0, SHUT_TIP * standingHeight_mm + opposingHeight_mm - back * dy, setup.spacing_mm - back * dz];
}

/** Points of the opposing crown in the standing tooth's frame. What lies below its crown's base is left out. */
export function opposingPoints(opposing: TriMesh, move: Vec3): Float32Array {
	const { positions: p } = opposing;
	const points: number[] = [];
	for (let i = 0; i < p.length; i += 3) {
		if (p[i + 1] < 0) continue;
		points.push(p[i] + move[0], -p[i + 1] + move[1], -p[i + 2] + move[2]);
	}
	return Float32Array.from(points);
}
