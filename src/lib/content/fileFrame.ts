import { vec3, type Vec3 } from '../domain/vec3';

/**
 * How a scan was turned: tooth = rows * file + offset, both in mm. The rows are at right angles and of
 * unit length, so the way back is exact.
 */
export interface FileFrame {
	rows: [Vec3, Vec3, Vec3];
	offset: Vec3;
}

/** A point of the tooth frame in the scan file's own frame, mm. */
export const toFile = ({ rows, offset }: FileFrame, point: Vec3): Vec3 =>
	turnToFile({ rows }, vec3.subtract(point, offset));

/** A direction of the tooth frame in the scan file's own frame. */
export function turnToFile({ rows: [x, y, z] }: Pick<FileFrame, 'rows'>, direction: Vec3): Vec3 {
	const along = (axis: 0 | 1 | 2): number =>
		x[axis] * direction[0] + y[axis] * direction[1] + z[axis] * direction[2];
	return [along(0), along(1), along(2)];
}

/** A point of the scan file's own frame, mm, in the tooth frame. */
export const toTooth = ({ rows: [x, y, z], offset }: FileFrame, point: Vec3): Vec3 =>
	vec3.add([vec3.dot(x, point), vec3.dot(y, point), vec3.dot(z, point)], offset);
