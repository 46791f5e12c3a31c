import { describe, expect, it } from 'vitest';
import { clipHalfSpace, type HalfSpace } from '../../../src/lib/domain/mesh/clipHalfSpace';
import { regionIndex, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { enclosedVolume, plainForm, regionArea, sculpted, surfaceFaults } from '../tooth/helpers';

/** Areas and volumes of cut solids: common practice, no source (school geometry). */
const withRegions = (positions: number[], indices: number[]): TriMesh => ({
	positions: new Float32Array(positions),
	indices: new Uint32Array(indices),
	regions: new Uint8Array(indices.length / 3),
});

/** Cube of edge 2 about the origin. */
const cube = (): TriMesh =>
	withRegions(
		[-1, -1, -1, 1, -1, -1, 1, 1, -1, -1, 1, -1, -1, -1, 1, 1, -1, 1, 1, 1, 1, -1, 1, 1],
		[
			[0, 2, 1, 0, 3, 2],
			[4, 5, 6, 4, 6, 7],
			[0, 1, 5, 0, 5, 4],
			[1, 2, 6, 1, 6, 5],
			[2, 3, 7, 2, 7, 6],
			[3, 0, 4, 3, 4, 7],
		].flat(),
	);

/** Sphere of radius r by rings. `inward` turns its faces. */
function sphere(r: number, inward = false): TriMesh {
	const [rows, columns] = [60, 90];
	const positions = [0, r, 0];
	for (let i = 1; i < rows; i++)
		for (let j = 0; j < columns; j++) {
			const [a, b] = [(Math.PI * i) / rows, (2 * Math.PI * j) / columns];
			positions.push(r * Math.sin(a) * Math.cos(b), r * Math.cos(a), r * Math.sin(a) * Math.sin(b));
		}
	positions.push(0, -r, 0);
	const last = positions.length / 3 - 1;
	const indices: number[] = [];
	const add = (a: number, b: number, c: number) => indices.push(...(inward ? [a, c, b] : [a, b, c]));
	for (let j = 0; j < columns; j++) {
		const k = (j + 1) % columns;
		add(0, 1 + k, 1 + j);
		add(last - columns + j, last - columns + k, last);
		for (let i = 0; i + 2 < rows; i++) {
			const [p, q] = [1 + i * columns + j, 1 + i * columns + k];
			add(p, q, p + columns);
			add(q, q + columns, p + columns);
		}
	}
	return withRegions(positions, indices);
}

const joined = (a: TriMesh, b: TriMesh): TriMesh =>
	withRegions(
		[...a.positions, ...b.positions],
		[...a.indices, ...Array.from(b.indices, (i) => i + a.positions.length / 3)],
	);

const cut = (mesh: TriMesh, half: HalfSpace): TriMesh => {
	const result = clipHalfSpace(mesh, half, 'facet');
	if (!result) throw new Error('nothing was left');
	return result;
};
const half = (x: number, y: number, z: number, offset_mm: number): HalfSpace => {
	const n = Math.hypot(x, y, z);
	return { normal: [x / n, y / n, z / n], offset_mm };
};
/** Faults that the cut may not make; a vertex on the plane may stand alone in a mesh of several pieces. */
const openEdges = (mesh: TriMesh) => surfaceFaults(mesh).filter((fault) => !fault.endsWith('pieces'));

describe('clipHalfSpace', () => {
	it('returns the very same mesh when the plane misses it or only touches it', () => {
		const mesh = cube();
		expect(clipHalfSpace(mesh, half(0, 1, 0, 3), 'facet')).toBe(mesh);
		expect(clipHalfSpace(mesh, half(0, 1, 0, 1), 'facet')).toBe(mesh);
	});

	it('returns null when nothing is left', () => {
		expect(clipHalfSpace(cube(), half(0, 1, 0, -3), 'facet')).toBeNull();
		expect(clipHalfSpace(cube(), half(0, 1, 0, -1), 'facet')).toBeNull();
	});

	it.each([-0.75, -0.2, 0, 0.3, 0.99])('cuts a cube across at %d', (y) => {
		const mesh = cut(cube(), half(0, 1, 0, y));
		expect(surfaceFaults(mesh)).toEqual([]);
		expect(enclosedVolume(mesh)).toBeCloseTo(4 * (y + 1), 4);
		expect(regionArea(mesh, 'facet')).toBeCloseTo(4, 4);
	});

	it('cuts a cube through its edges, where vertices lie on the plane', () => {
		const mesh = cut(cube(), half(1, 1, 0, 0));
		expect(surfaceFaults(mesh)).toEqual([]);
		expect(enclosedVolume(mesh)).toBeCloseTo(4, 3);
		expect(regionArea(mesh, 'facet')).toBeCloseTo(4 * Math.SQRT2, 3);
	});

	it('cuts a cube into a regular hexagon', () => {
		const mesh = cut(cube(), half(1, 1, 1, 0));
		expect(surfaceFaults(mesh)).toEqual([]);
		expect(enclosedVolume(mesh)).toBeCloseTo(4, 3);
		// side sqrt 2: area 3 sqrt 3 / 2 * 2
		expect(regionArea(mesh, 'facet')).toBeCloseTo(3 * Math.sqrt(3), 3);
	});

	it.each([[half(0, 1, 0, 0.5)], [half(1, 2, -0.5, -0.3)], [half(0, 1, 0, 0)], [half(1, 0, 0, 0.8)]])(
		'cuts a sphere: disc pi (r^2 - d^2) (%o)',
		(plane) => {
			const mesh = cut(sphere(1), plane);
			expect(surfaceFaults(mesh)).toEqual([]);
			const d = plane.offset_mm;
			expect(Math.abs(regionArea(mesh, 'facet') / (Math.PI * (1 - d * d)) - 1)).toBeLessThan(0.005);
			const kept = (Math.PI / 3) * (1 + d) ** 2 * (2 - d);
			expect(Math.abs(enclosedVolume(mesh) / kept - 1)).toBeLessThan(0.005);
			// the cap lies in the plane and faces along its normal
			const facet = regionIndex('facet');
			mesh.regions?.forEach((region, f) => {
				if (region !== facet) return;
				for (let k = 0; k < 3; k++) {
					const i = 3 * mesh.indices[3 * f + k];
					const [x, y, z] = mesh.positions.slice(i, i + 3);
					const distance = plane.normal[0] * x + plane.normal[1] * y + plane.normal[2] * z - d;
					expect(Math.abs(distance)).toBeLessThan(1e-5);
				}
			});
		},
	);

	it('cuts a sculpted cone aslant: an ellipse of area pi a b', () => {
		const form = plainForm({ crownHeight_mm: 60, tipRadius_mm: 0.01 });
		const whole = sculpted(form).mesh;
		const lean = (30 * Math.PI) / 180;
		const mesh = cut(whole, { normal: [Math.sin(lean), Math.cos(lean), 0], offset_mm: 30 * Math.cos(lean) });
		expect(surfaceFaults(mesh)).toEqual([]);
		// cone x^2 + z^2 = s^2 (h - y)^2 cut by x sin + y cos = 30 cos: with y = 30 - x tan, apex distance q = h - 30:
		// x^2 + z^2 = s^2 (q + x tan)^2 -> k = 1 - s^2 tan^2; semi-axes in plan A = s q / k, B = s q / sqrt(k)
		const virtual = 60 + 0.01 * (Math.hypot(6, 1) - 1);
		const s = 10 / virtual;
		const q = virtual - 30;
		const k = 1 - (s * Math.tan(lean)) ** 2;
		const area = (Math.PI * ((s * q) / k) * ((s * q) / Math.sqrt(k))) / Math.cos(lean);
		expect(Math.abs(regionArea(mesh, 'facet') / area - 1)).toBeLessThan(0.005);
	});

	it('caps a hollow body with a ring', () => {
		const mesh = cut(joined(sphere(1), sphere(0.6, true)), half(0.3, 1, 0.1, 0.2));
		expect(surfaceFaults(mesh)).toEqual([]);
		expect(Math.abs(regionArea(mesh, 'facet') / (Math.PI * (1 - 0.36)) - 1)).toBeLessThan(0.005);
	});

	it('leaves a cavity alone that the plane does not reach', () => {
		const mesh = cut(joined(sphere(1), sphere(0.3, true)), half(0, 1, 0, 0.6));
		expect(openEdges(mesh)).toEqual([]);
		expect(Math.abs(regionArea(mesh, 'facet') / (Math.PI * 0.64) - 1)).toBeLessThan(0.005);
	});

	it('caps two separate bodies', () => {
		const other = sphere(1);
		const moved = { ...other, positions: other.positions.map((x, i) => (i % 3 === 0 ? x + 5 : x)) };
		const mesh = cut(joined(sphere(1), moved), half(0, 1, 0, 0.4));
		expect(openEdges(mesh)).toEqual([]);
		expect(Math.abs(regionArea(mesh, 'facet') / (2 * Math.PI * 0.84) - 1)).toBeLessThan(0.005);
	});

	it('cuts a tooth through its pulp cavity and leaves it closed', () => {
		const { mesh } = sculpted(plainForm({ pulp: { height_mm: 25, opening: 0.5 } }));
		for (const y of [3, 12, 20, 24.9]) {
			const clipped = cut(mesh, half(0.1, 1, 0.2, y));
			expect(surfaceFaults(clipped)).toEqual([]);
			expect(enclosedVolume(clipped)).toBeGreaterThan(0);
		}
	});

	it('stays closed through many cuts one after the other', () => {
		let mesh = sphere(1);
		for (let i = 0; i < 24; i++) {
			const a = i * 2.399963;
			const y = 1 - (2 * (i + 0.5)) / 24;
			const r = Math.sqrt(1 - y * y);
			mesh = cut(mesh, half(r * Math.cos(a), y, r * Math.sin(a), 0.85));
			expect(surfaceFaults(mesh)).toEqual([]);
		}
		expect(enclosedVolume(mesh)).toBeGreaterThan((4 / 3) * Math.PI * 0.85 ** 3);
		expect(enclosedVolume(mesh)).toBeLessThan((4 / 3) * Math.PI);
	});

	it('refuses a mesh that is open where it is cut', () => {
		const mesh = cube();
		const open = { ...mesh, indices: mesh.indices.slice(12), regions: mesh.regions?.slice(4) };
		expect(() => clipHalfSpace(open, half(0, 0, 1, 0), 'facet')).not.toThrow();
		expect(() => clipHalfSpace(open, half(0, 1, 0, 0), 'facet')).toThrow(/^clipHalfSpace: /);
	});
});
