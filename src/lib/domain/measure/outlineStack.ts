import { section, type PlaneFrame } from '../mesh/section';
import type { TriMesh } from '../mesh/triMesh';
import { polarOutline, type PolarOutline } from './polarOutline';

/** Outlines of many sections, from low to high. */
export interface OutlineStack {
	/** fractions of axial height, evenly spaced */
	at: Float64Array;
	/** null where the section has none */
	outlines: (PolarOutline | null)[];
	/** sections that cross a hole in the mesh and were closed by a straight line */
	open: number;
}

/** Heights that are looked at, fractions of axial height: the base's rim and the tip's cap are neither. */
export const LOWEST = 0.03;
export const HIGHEST = 0.95;
export const LEVELS = 93;
/** Triangles are sorted into this many bands of height, so that a section looks at few of them. */
const BANDS = 31;

/** Cuts the crown at `LEVELS` heights and samples the largest outline of each. */
export function outlineStack(
	mesh: TriMesh,
	frame: PlaneFrame,
	height_mm: number,
	heights: Float64Array,
): OutlineStack {
	const at = Float64Array.from(
		{ length: LEVELS },
		(_, i) => LOWEST + ((HIGHEST - LOWEST) * i) / (LEVELS - 1),
	);
	const low = (LOWEST - 1e-6) * height_mm;
	const tall = ((HIGHEST - LOWEST + 2e-6) * height_mm) / BANDS;
	const bands = bandsOf(mesh.indices, heights, low, tall);
	let open = 0;
	const outlines = Array.from(at, (fraction) => {
		const band = Math.min(BANDS - 1, Math.floor((fraction * height_mm - low) / tall));
		const part: TriMesh = { positions: mesh.positions, indices: bands[band] };
		const [loop] = section(part, frame, fraction * height_mm, heights);
		if (loop && !loop.closed) open++;
		return loop ? polarOutline(loop.points) : null;
	});
	return { at, outlines, open };
}

/** Corners of the triangles that reach into each band. */
function bandsOf(indices: Uint32Array, heights: Float64Array, low: number, tall: number): Uint32Array[] {
	const spans = (use: (band: number, k: number) => void): void => {
		for (let k = 0; k < indices.length; k += 3) {
			const a = heights[indices[k]];
			const b = heights[indices[k + 1]];
			const c = heights[indices[k + 2]];
			const first = Math.max(0, Math.floor((Math.min(a, b, c) - low) / tall));
			const last = Math.min(BANDS - 1, Math.floor((Math.max(a, b, c) - low) / tall));
			for (let band = first; band <= last; band++) use(band, k);
		}
	};
	const counts = new Uint32Array(BANDS);
	spans((band) => counts[band]++);
	const bands = Array.from(counts, (count) => new Uint32Array(count * 3));
	const filled = new Uint32Array(BANDS);
	spans((band, k) => {
		const to = bands[band];
		const i = filled[band];
		to[i] = indices[k];
		to[i + 1] = indices[k + 1];
		to[i + 2] = indices[k + 2];
		filled[band] += 3;
	});
	return bands;
}
