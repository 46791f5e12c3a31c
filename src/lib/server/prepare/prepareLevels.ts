import { MeshoptSimplifier } from 'meshoptimizer';
import { normals } from '../../domain/mesh/normals';
import { occlusion } from '../../domain/mesh/occlusion';
import type { TriMesh } from '../../domain/mesh/triMesh';
import type { ShapeLevel } from './shapeLevel';
import { simplifyFull, simplifyLight, type Surface } from './simplify';

/** Above this a scan is thinned before anything costly is done; detail finer than a picture can show goes. */
const THIN_ABOVE = 200_000;

/**
 * Makes the two levels of a welded mesh in the tooth frame: the full one and the light one, with
 * normals, creases and baked ambient light. `baking` is called when the light's turn has come.
 */
export async function prepareLevels(
	mesh: TriMesh,
	baking: () => void = () => undefined,
): Promise<[full: ShapeLevel, light: ShapeLevel]> {
	await MeshoptSimplifier.ready;
	const full = await simplifyFull(normals(thinned(mesh)));
	const light = await simplifyLight(full);
	baking();
	return [withLight(full), withLight(light)];
}

function thinned(mesh: TriMesh): TriMesh {
	// a mesh with regions comes from the sculptor and is never that fine
	if (mesh.regions || mesh.indices.length / 3 <= THIN_ABOVE) return mesh;
	const [indices] = MeshoptSimplifier.simplify(mesh.indices, mesh.positions, 3, THIN_ABOVE * 3, 0.0005);
	const order = indices.slice();
	const [remap, count] = MeshoptSimplifier.compactMesh(order);
	const positions = new Float32Array(count * 3);
	for (let i = 0; i < remap.length; i++) {
		if (remap[i] < count) positions.set(mesh.positions.subarray(i * 3, i * 3 + 3), remap[i] * 3);
	}
	return { positions, indices: order };
}

/** Bakes how open each vertex is; copies at one place count as one, so that no seam shows. */
function withLight({ positions, normals, regions, indices }: Surface): ShapeLevel {
	const one = MeshoptSimplifier.generatePositionRemap(positions, 3);
	const open = occlusion({ positions, indices: indices.map((vertex) => one[vertex]) });
	const openness = Uint8Array.from(one, (vertex) => Math.round(255 * open[vertex]));
	return { positions, normals, regions, indices, openness };
}
