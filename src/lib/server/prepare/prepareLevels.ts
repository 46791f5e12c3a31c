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
 * `colours`: red, green, blue per vertex of the mesh.
 */
export async function prepareLevels(
	mesh: TriMesh,
	baking: () => void = () => undefined,
	colours?: Uint8Array,
): Promise<[full: ShapeLevel, light: ShapeLevel]> {
	await MeshoptSimplifier.ready;
	const full = await simplifyFull(shaded(thinned(mesh, colours)));
	const light = await simplifyLight(full);
	baking();
	return [withLight(full), withLight(light)];
}

interface Coloured {
	mesh: TriMesh;
	colours?: Uint8Array;
}

/** With normals, and the colour of the vertex that each was made from. */
function shaded({ mesh, colours }: Coloured): Surface {
	const { source, ...surface } = normals(mesh);
	if (!colours) return surface;
	const spread = new Uint8Array(source.length * 3);
	source.forEach((vertex, i) => spread.set(colours.subarray(vertex * 3, vertex * 3 + 3), i * 3));
	return { ...surface, colours: spread };
}

function thinned(mesh: TriMesh, colours?: Uint8Array): Coloured {
	// a mesh with regions comes from the sculptor and is never that fine
	if (mesh.regions || mesh.indices.length / 3 <= THIN_ABOVE) return colours ? { mesh, colours } : { mesh };
	const [indices] = MeshoptSimplifier.simplify(mesh.indices, mesh.positions, 3, THIN_ABOVE * 3, 0.0005);
	const order = indices.slice();
	const [remap, count] = MeshoptSimplifier.compactMesh(order);
	const kept = <A extends Float32Array | Uint8Array>(from: A, to: A): A => {
		for (let i = 0; i < remap.length; i++) {
			if (remap[i] < count) to.set(from.subarray(i * 3, i * 3 + 3), remap[i] * 3);
		}
		return to;
	};
	const positions = kept(mesh.positions, new Float32Array(count * 3));
	const left = { mesh: { positions, indices: order } };
	return colours ? { ...left, colours: kept(colours, new Uint8Array(count * 3)) } : left;
}

/** Bakes how open each vertex is; copies at one place count as one, so that no seam shows. */
function withLight({ positions, normals, regions, colours, indices }: Surface): ShapeLevel {
	const one = MeshoptSimplifier.generatePositionRemap(positions, 3);
	const open = occlusion({ positions, indices: indices.map((vertex) => one[vertex]) });
	const openness = Uint8Array.from(one, (vertex) => Math.round(255 * open[vertex]));
	return { positions, normals, regions, ...(colours ? { colours } : {}), indices, openness };
}
