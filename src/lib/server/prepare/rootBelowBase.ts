import { regionIndex } from '../../domain/mesh/triMesh';
import type { ShapeLevel } from './shapeLevel';

/**
 * Gives what lies below the base plane (y = 0) of a marked scan the region `root`. Triangles across the
 * plane are cut along it, so that the border is a clean line; corners on it stand there once for each side.
 */
export function rootBelowBase(level: ShapeLevel): ShapeLevel {
	const { positions, normals, openness, regions, colours, indices } = level;
	const root = regionIndex('root');
	const out = {
		positions: [] as number[],
		normals: [] as number[],
		openness: [] as number[],
		regions: [] as number[],
		colours: [] as number[],
		indices: [] as number[],
	};
	const made = new Map<string, number>();
	const below = (vertex: number): boolean => positions[vertex * 3 + 1] < 0;

	/** A corner of the level, or a point `t` of the way from one to another, on one side of the plane. */
	function corner(from: number, to: number, t: number, isRoot: boolean): number {
		const key = `${from},${to},${isRoot}`;
		const known = made.get(key);
		if (known !== undefined) return known;
		const mix = (values: ArrayLike<number>, at: (vertex: number) => number): number =>
			values[at(from)] + (values[at(to)] - values[at(from)]) * t;
		const axes = [0, 1, 2].map((axis) => (vertex: number) => vertex * 3 + axis);
		out.positions.push(...axes.map((at) => mix(positions, at)));
		const normal = axes.map((at) => mix(normals, at));
		const size = Math.hypot(...normal) || 1;
		out.normals.push(...normal.map((value) => value / size));
		if (colours) out.colours.push(...axes.map((at) => Math.round(mix(colours, at))));
		out.openness.push(Math.round(mix(openness, (vertex) => vertex)));
		out.regions.push(isRoot ? root : regions[from]);
		const vertex = out.regions.length - 1;
		made.set(key, vertex);
		return vertex;
	}

	for (let k = 0; k < indices.length; k += 3) {
		const corners = [indices[k], indices[k + 1], indices[k + 2]];
		for (const isRoot of [false, true]) {
			const side = outlineOnSide(corners, isRoot);
			for (let i = 1; i + 1 < side.length; i++) out.indices.push(side[0], side[i], side[i + 1]);
		}
	}

	/** The part of a triangle on one side of the plane, in order round it. */
	function outlineOnSide(corners: readonly number[], isRoot: boolean): number[] {
		const side: number[] = [];
		corners.forEach((from, i) => {
			const to = corners[(i + 1) % 3];
			if (below(from) === isRoot) side.push(corner(from, from, 0, isRoot));
			if (below(from) === below(to)) return;
			// the same point from both triangles beside the edge
			const [a, b] = from < to ? [from, to] : [to, from];
			const [high, low] = [positions[a * 3 + 1], positions[b * 3 + 1]];
			side.push(corner(a, b, high / (high - low), isRoot));
		});
		return side;
	}

	return {
		positions: Float32Array.from(out.positions),
		normals: Float32Array.from(out.normals),
		openness: Uint8Array.from(out.openness),
		regions: Uint8Array.from(out.regions),
		...(colours ? { colours: Uint8Array.from(out.colours) } : {}),
		indices: Uint32Array.from(out.indices),
	};
}
