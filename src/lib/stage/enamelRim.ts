/** How near enamel lies to where it has worn or broken away: its edge there is drawn as a bright line. */
import { regionIndex } from '../domain/mesh/triMesh';

/** Farther than this share of the tooth's height counts as far. Wider than the line: triangles reach beyond it. */
export const RIM_REACH = 0.03;

/**
 * Fills byte 3 of each vertex's four `surface` bytes (byte 2: region): 0 = enamel right at the edge of a facet or of
 * bare dentine, 255 = everything else. Vertices on a border stand there once for each region.
 */
export const enamelRim = (
	positions: Float32Array,
	surface: Uint8Array,
	places: { of: Uint32Array; count: number },
): void => {
	const count = surface.length / 4;
	const bareFrom = regionIndex('facet');
	const bareTo = regionIndex('dentine');
	const region = (i: number) => surface[i * 4 + 2];
	const bare = new Uint8Array(places.count);
	let bares = 0;
	let low = Infinity;
	let high = -Infinity;
	for (let i = 0; i < count; i++) {
		surface[i * 4 + 3] = 255;
		if (region(i) >= bareFrom && region(i) <= bareTo) {
			bare[places.of[i]] = 1;
			bares++;
		}
		low = Math.min(low, positions[i * 3 + 1]);
		high = Math.max(high, positions[i * 3 + 1]);
	}
	const reach = RIM_REACH * (high - low);
	if (bares === 0 || !(reach > 0)) return;

	// edge points by cell of the size of the reach, so that each vertex asks only its neighbours
	const cell = (x: number, y: number, z: number) =>
		(Math.floor(x / reach) * 1024 + Math.floor(y / reach)) * 1024 + Math.floor(z / reach);
	const cells = new Map<number, number[]>();
	for (let i = 0; i < count; i++) {
		if (region(i) >= bareFrom || !bare[places.of[i]]) continue;
		const key = cell(positions[i * 3], positions[i * 3 + 1], positions[i * 3 + 2]);
		const there = cells.get(key);
		if (there) there.push(i);
		else cells.set(key, [i]);
	}
	if (cells.size === 0) return;
	for (let i = 0; i < count; i++) {
		if (region(i) >= bareFrom) continue;
		const [x, y, z] = positions.subarray(i * 3, i * 3 + 3);
		let nearest = reach;
		for (let dx = -1; dx <= 1; dx++)
			for (let dy = -1; dy <= 1; dy++)
				for (let dz = -1; dz <= 1; dz++)
					for (const j of cells.get(cell(x + dx * reach, y + dy * reach, z + dz * reach)) ?? [])
						nearest = Math.min(
							nearest,
							Math.hypot(positions[j * 3] - x, positions[j * 3 + 1] - y, positions[j * 3 + 2] - z),
						);
		surface[i * 4 + 3] = Math.round((255 * nearest) / reach);
	}
};
