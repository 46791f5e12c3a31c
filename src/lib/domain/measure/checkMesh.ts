import type { TriMesh } from '../mesh/triMesh';
import type { MeasureProblem } from './crownMeasures';

/** First reason why nothing can be measured, or null: no triangles, a position that is no number, a wrong index. */
export function checkMesh(mesh: TriMesh): MeasureProblem | null {
	const { positions, indices } = mesh;
	if (indices.length < 3 || positions.length < 9) {
		return { code: 'empty', message: 'The mesh has no triangles.' };
	}
	for (let i = 0; i < positions.length; i++) {
		if (!Number.isFinite(positions[i])) {
			return {
				code: 'not-a-number',
				message: `Vertex ${Math.floor(i / 3)} has a coordinate that is not a number.`,
			};
		}
	}
	const vertices = Math.floor(positions.length / 3);
	for (let k = 0; k < indices.length; k++) {
		if (indices[k] >= vertices) {
			return {
				code: 'bad-index',
				message: `Triangle ${Math.floor(k / 3)} uses vertex ${indices[k]}, but there are only ${vertices}.`,
			};
		}
	}
	if (indices.length % 3 !== 0) {
		return { code: 'bad-index', message: 'The number of triangle corners is not a multiple of three.' };
	}
	return null;
}
