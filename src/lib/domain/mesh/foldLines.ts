import { chainEdges } from './chainEdges';
import type { SurfaceLine } from './surfaceLine';
import { regionIndex, type TriMesh } from './triMesh';
import type { Vec3 } from '../vec3';

/**
 * Where a surface turns away from a viewer in direction `towards`: lines of zero product of view and smooth normal,
 * straight inside each triangle (Hertzmann & Zorin 2000, doi:10.1145/344779.345074). Cutting edges and ridges are left
 * out: their flanks turn away all along, and their crests are lines of their own. `normals` as of `vertexNormals`.
 */
export function foldLines(mesh: TriMesh, normals: Float32Array, towards: Vec3): SurfaceLine[] {
	const { positions: p, indices, regions } = mesh;
	const [carina, ridge] = [regionIndex('carina'), regionIndex('ridge')];
	const vertices = p.length / 3;
	const facing = new Float64Array(vertices);
	for (let i = 0; i < vertices; i++) {
		facing[i] =
			normals[i * 3] * towards[0] + normals[i * 3 + 1] * towards[1] + normals[i * 3 + 2] * towards[2];
	}
	const nodeOfEdge = new Map<number, number>();
	const ends: [number, number][] = [];
	const nodeOn = (a: number, b: number): number => {
		const key = a < b ? a * vertices + b : b * vertices + a;
		let node = nodeOfEdge.get(key);
		if (node === undefined) {
			node = ends.length;
			ends.push(a < b ? [a, b] : [b, a]);
			nodeOfEdge.set(key, node);
		}
		return node;
	};
	const pairs: [number, number][] = [];
	for (let k = 0; k < indices.length; k += 3) {
		const region = regions?.[k / 3];
		if (region === carina || region === ridge) continue;
		const corners = [indices[k], indices[k + 1], indices[k + 2]];
		const seen = corners.filter((corner) => facing[corner] >= 0).length;
		if (seen === 0 || seen === 3) continue;
		const lone = corners.findIndex((corner) => facing[corner] >= 0 === (seen === 1));
		const [a, b, c] = [corners[lone], corners[(lone + 1) % 3], corners[(lone + 2) % 3]];
		pairs.push([nodeOn(a, b), nodeOn(a, c)]);
	}
	return chainEdges(pairs).map(({ nodes, closed }) => {
		const line: SurfaceLine = { kind: 'fold', points: [], normals: [], closed };
		for (const node of nodes) {
			const [a, b] = ends[node];
			const t = facing[a] / (facing[a] - facing[b]);
			for (let k = 0; k < 3; k++) {
				line.points.push(p[a * 3 + k] + (p[b * 3 + k] - p[a * 3 + k]) * t);
				line.normals.push(normals[a * 3 + k] + (normals[b * 3 + k] - normals[a * 3 + k]) * t);
			}
		}
		return line;
	});
}
