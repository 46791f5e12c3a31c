import { REGIONS, type Region, type TriMesh } from '../mesh/triMesh';
import { surfaceArea } from '../mesh/surfaceArea';

/**
 * Area of each region of a mesh, mm2; regions that it lacks have 0. Null for a mesh without regions.
 * The areas add up to the mesh's whole surface.
 */
export function regionAreas(mesh: TriMesh): Record<Region, number> | null {
	const { positions, indices, regions } = mesh;
	if (!regions) return null;
	const areas = {} as Record<Region, number>;
	REGIONS.forEach((region, number) => {
		const own = indices.filter((_, i) => regions[Math.floor(i / 3)] === number);
		areas[region] = surfaceArea({ positions, indices: own });
	});
	return areas;
}
