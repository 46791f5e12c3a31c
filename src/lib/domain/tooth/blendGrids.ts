import type { TriMesh } from '../mesh/triMesh';
import type { Vec3 } from '../vec3';
import type { GridTooth } from './sculptGrid';

/**
 * A tooth between others, point by point: weights (which sum to 1) in the order of the teeth. All must be made over the same
 * columns. Triangles and regions are those of the first, the same objects each time, so that whoever draws it knows.
 */
export function blendGrids(teeth: readonly GridTooth[], weights: readonly number[]): GridTooth {
	const [first] = teeth;
	const count = first.mesh.positions.length;
	for (const { mesh } of teeth)
		if (mesh.positions.length !== count) throw new Error('blendGrids: the teeth have different grids');
	const positions = new Float32Array(count);
	for (let i = 0; i < count; i++) {
		let sum = 0;
		for (let k = 0; k < teeth.length; k++) sum += weights[k] * teeth[k].mesh.positions[i];
		positions[i] = sum;
	}
	const between = (at: (tooth: GridTooth) => Vec3): Vec3 => {
		const sum: [number, number, number] = [0, 0, 0];
		teeth.forEach((tooth, k) => at(tooth).forEach((value, axis) => (sum[axis] += weights[k] * value)));
		return sum;
	};
	const mesh: TriMesh = { positions, indices: first.mesh.indices, regions: first.mesh.regions };
	return {
		mesh,
		marks: {
			apex: between(({ marks }) => marks.apex),
			baseMesial: between(({ marks }) => marks.baseMesial),
			baseDistal: between(({ marks }) => marks.baseDistal),
			labial: first.marks.labial,
		},
		columns: first.columns,
		ringStart: first.ringStart,
	};
}
