import { growingIndices } from './growing';
import { LIMITS } from './limits';
import { ScanFault } from './scanProblem';
import { triangulatePolygon } from './triangulatePolygon';

/** Triangles and polygons in the order a file lists them, which may be before its corners are known. */
export class FaceList {
	private readonly triangles = growingIndices();
	/** number of corners, then the corners, polygon after polygon */
	private readonly polygons = growingIndices();
	private polygonTriangles = 0;

	/** Adds one face; fewer than three corners are no face and are left out. */
	add(corners: ArrayLike<number>, count: number): void {
		if (count < 3) return;
		if (count === 3) for (let i = 0; i < 3; i++) this.triangles.push(corners[i]);
		else {
			if (count > LIMITS.polygonCorners) {
				throw new ScanFault(
					'too-large',
					`One polygon has ${count} corners; at most ${LIMITS.polygonCorners} can be read.`,
					'Save the surface as triangles.',
				);
			}
			this.polygons.push(count);
			for (let i = 0; i < count; i++) this.polygons.push(corners[i]);
			this.polygonTriangles += count - 2;
		}
		if (this.triangles.length / 3 + this.polygonTriangles > LIMITS.triangles) throw tooManyTriangles();
	}

	/** All faces as triangles; throws for a corner that the file does not have. */
	finish(positions: ArrayLike<number>): Uint32Array {
		const vertices = positions.length / 3;
		const triangles = this.triangles.view();
		const out = new Uint32Array(triangles.length + this.polygonTriangles * 3);
		for (let k = 0; k < triangles.length; k++) {
			if (triangles[k] >= vertices) throw noSuchCorner(triangles[k], vertices);
			out[k] = triangles[k];
		}
		let at = triangles.length;
		const polygons = this.polygons.view();
		const points: number[] = [];
		for (let k = 0; k < polygons.length;) {
			const count = polygons[k++];
			for (let i = 0; i < count; i++) {
				const corner = polygons[k + i];
				if (corner >= vertices) throw noSuchCorner(corner, vertices);
				for (let axis = 0; axis < 3; axis++) points[i * 3 + axis] = positions[corner * 3 + axis];
			}
			const first = k;
			triangulatePolygon(points, count, (a, b, c) => {
				out[at++] = polygons[first + a];
				out[at++] = polygons[first + b];
				out[at++] = polygons[first + c];
			});
			k += count;
		}
		return out;
	}
}

export function tooManyTriangles(): ScanFault {
	return new ScanFault(
		'too-large',
		`The scan has more than ${LIMITS.triangles / 1e6} million triangles, the most that can be read.`,
	);
}

export function tooManyVertices(): ScanFault {
	return new ScanFault(
		'too-large',
		`The scan has more than ${LIMITS.vertices / 1e6} million points, the most that can be read.`,
	);
}

/** `corner` and `vertices` count from 0. */
export function noSuchCorner(corner: number, vertices: number): ScanFault {
	return new ScanFault(
		'index-out-of-range',
		`A triangle uses point number ${corner + 1}, but the file has only ${vertices} points.`,
	);
}
