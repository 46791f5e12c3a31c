/** A tooth's middle line with a radius at each point, mm: five balls on a string, enough for a soft shadow. */
export interface CentreLine {
	/** x, y, z, radius per point */
	readonly points: Float32Array;
}

export const CENTRE_POINTS = 6;

/** Centroid and mean half-width of the vertices in each of CENTRE_POINTS layers along y (tooth frame, mm). */
export const centreLine = (positions: Float32Array): CentreLine => {
	const points = new Float32Array(CENTRE_POINTS * 4);
	let low = Infinity;
	let high = -Infinity;
	for (let i = 1; i < positions.length; i += 3) {
		low = Math.min(low, positions[i]);
		high = Math.max(high, positions[i]);
	}
	if (!(high > low)) return { points };
	const layers = Array.from({ length: CENTRE_POINTS }, () => ({
		n: 0,
		min: [Infinity, Infinity],
		max: [-Infinity, -Infinity],
		y: 0,
	}));
	for (let i = 0; i < positions.length; i += 3) {
		const layer =
			layers[
				Math.min(CENTRE_POINTS - 1, Math.floor(((positions[i + 1] - low) / (high - low)) * CENTRE_POINTS))
			];
		layer.n++;
		layer.y += positions[i + 1];
		for (const [k, axis] of [0, 2].entries()) {
			layer.min[k] = Math.min(layer.min[k], positions[i + axis]);
			layer.max[k] = Math.max(layer.max[k], positions[i + axis]);
		}
	}
	let last = layers.find((l) => l.n > 0)!;
	layers.forEach((layer, i) => {
		const own = layer.n > 0 ? layer : last;
		last = own;
		points[i * 4] = (own.min[0] + own.max[0]) / 2;
		points[i * 4 + 1] = low + ((i + 0.5) / CENTRE_POINTS) * (high - low);
		points[i * 4 + 2] = (own.min[1] + own.max[1]) / 2;
		points[i * 4 + 3] = (own.max[0] - own.min[0] + own.max[1] - own.min[1]) / 4;
	});
	return { points };
};
