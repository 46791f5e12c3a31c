import type { Manifold, ManifoldToplevel, Mesh } from 'manifold-3d';
import type { Solids } from './solids';
import type { TriMesh } from './triMesh';

/** `Solids` by manifold-3d (Apache 2.0); `module` has been set up (`module.setup()`). Regions are kept. */
export function manifoldSolids(module: ManifoldToplevel): Solids {
	const { Manifold: Solid, Mesh: Surface } = module;

	/** One run of triangles for each region, so that each triangle of a result tells where it came from. */
	const solid = (mesh: TriMesh, regionOf: Map<number, number>): Manifold => {
		const { indices, regions } = mesh;
		const order = Array.from({ length: indices.length / 3 }, (_, t) => t);
		if (regions) order.sort((a, b) => regions[a] - regions[b]);
		const triVerts = new Uint32Array(indices.length);
		const runs: number[] = [];
		const ids: number[] = [];
		order.forEach((t, i) => {
			if (i === 0 || (regions && regions[t] !== regions[order[i - 1]])) {
				runs.push(3 * i);
				const id = Solid.reserveIDs(1);
				ids.push(id);
				regionOf.set(id, regions?.[t] ?? 0);
			}
			triVerts.set(indices.subarray(3 * t, 3 * t + 3), 3 * i);
		});
		const surface = new Surface({
			numProp: 3,
			vertProperties: mesh.positions.slice(),
			triVerts,
			runIndex: Uint32Array.from([...runs, triVerts.length]),
			runOriginalID: Uint32Array.from(ids),
		});
		return new Solid(surface);
	};

	const back = (surface: Mesh, regionOf: ReadonlyMap<number, number> | null): TriMesh => {
		// vertices that only stand apart because regions meet there become one again
		const to = new Uint32Array(surface.numVert).map((_, i) => i);
		surface.mergeFromVert?.forEach((from, i) => (to[from] = surface.mergeToVert[i]));
		const indices = surface.triVerts.map((i) => to[i]);
		const used = new Int32Array(surface.numVert).fill(-1);
		const positions: number[] = [];
		for (let k = 0; k < indices.length; k++) {
			const i = indices[k];
			if (used[i] < 0) {
				used[i] = positions.length / 3;
				for (let c = 0; c < 3; c++) positions.push(surface.vertProperties[i * surface.numProp + c]);
			}
			indices[k] = used[i];
		}
		const mesh = { positions: Float32Array.from(positions), indices };
		if (!regionOf) return mesh;
		const regions = new Uint8Array(indices.length / 3);
		for (let r = 0; r < surface.runOriginalID.length; r++)
			regions.fill(
				regionOf.get(surface.runOriginalID[r]) ?? 0,
				surface.runIndex[r] / 3,
				surface.runIndex[r + 1] / 3,
			);
		return { ...mesh, regions };
	};

	return {
		subtract(from, gone) {
			const regionOf = new Map<number, number>();
			const [a, b] = [solid(from, regionOf), solid(gone, regionOf)];
			const left = a.subtract(b);
			const mesh = left.isEmpty() ? null : back(left.getMesh(), regionOf);
			for (const used of [a, b, left]) used.delete();
			return mesh;
		},
		hull(points) {
			const corners = Array.from({ length: points.length / 3 }, (_, i): [number, number, number] => [
				points[3 * i],
				points[3 * i + 1],
				points[3 * i + 2],
			]);
			const hull = Solid.hull(corners);
			const mesh = back(hull.getMesh(), null);
			hull.delete();
			return mesh;
		},
	};
}
