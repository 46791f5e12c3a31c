import type { TriMesh } from '../mesh/triMesh';

/** Whether every edge is used exactly twice, once in each direction. */
export function isClosed(mesh: TriMesh): boolean {
	const { indices } = mesh;
	const count = mesh.positions.length / 3;
	// every directed edge as one number; sorted, the edges and their reverses must be the same list without repeats
	const forward = new Float64Array(indices.length);
	const backward = new Float64Array(indices.length);
	for (let f = 0; f < indices.length; f += 3) {
		for (let k = 0; k < 3; k++) {
			const [a, b] = [indices[f + k], indices[f + ((k + 1) % 3)]];
			forward[f + k] = a * count + b;
			backward[f + k] = b * count + a;
		}
	}
	forward.sort();
	backward.sort();
	for (let i = 0; i < forward.length; i++)
		if (forward[i] !== backward[i] || (i > 0 && forward[i] === forward[i - 1])) return false;
	return true;
}
