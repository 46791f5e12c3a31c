import { REGIONS, type Region, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import type { FormProblem, ToothForm } from '../../../src/lib/domain/tooth/form';
import { sculpt, type SculptedTooth, type SculptOptions } from '../../../src/lib/domain/tooth/sculpt';

/** A straight round cone without root: the plainest form; tests change what they look at. */
export const plainForm = (changes: Partial<ToothForm> = {}): ToothForm => ({
	crownHeight_mm: 40,
	baseLength_mm: 20,
	baseWidth_mm: 20,
	sections: [{ at: 0, shape: 'round' }],
	taper: 'cone',
	curve: { distal_deg: 0, lingual_deg: 0, startsAt: 0.2 },
	tipRadius_mm: 0.5,
	carinae: [],
	root: { state: 'none' },
	...changes,
});

/** Sculpts a form that must be legal. */
export function sculpted(form: ToothForm, options?: SculptOptions): SculptedTooth {
	const result = sculpt(form, options);
	if (!result.ok) throw new Error(`the form was refused: ${JSON.stringify(result.problem)}`);
	return result.value;
}

/** Sculpts a form that must be refused. */
export function refused(form: ToothForm): FormProblem {
	const result = sculpt(form);
	if (result.ok) throw new Error('the form was accepted');
	return result.problem;
}

const corner = (mesh: TriMesh, f: number, k: number): [number, number, number] => {
	const i = 3 * mesh.indices[f + k];
	return [mesh.positions[i], mesh.positions[i + 1], mesh.positions[i + 2]];
};

/** Enclosed volume by the divergence theorem, mm3; positive when faces look outward. */
export function enclosedVolume(mesh: TriMesh): number {
	let six = 0;
	for (let f = 0; f < mesh.indices.length; f += 3) {
		const [a, b, c] = [corner(mesh, f, 0), corner(mesh, f, 1), corner(mesh, f, 2)];
		six +=
			a[0] * (b[1] * c[2] - b[2] * c[1]) +
			a[1] * (b[2] * c[0] - b[0] * c[2]) +
			a[2] * (b[0] * c[1] - b[1] * c[0]);
	}
	return six / 6;
}

export function triangleAreas(mesh: TriMesh): Float64Array {
	const areas = new Float64Array(mesh.indices.length / 3);
	for (let f = 0; f < mesh.indices.length; f += 3) {
		const [a, b, c] = [corner(mesh, f, 0), corner(mesh, f, 1), corner(mesh, f, 2)];
		const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
		const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
		areas[f / 3] =
			Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
	}
	return areas;
}

/** Area of one region, mm2. */
export function regionArea(mesh: TriMesh, region: Region): number {
	const index = REGIONS.indexOf(region);
	return triangleAreas(mesh).reduce((sum, area, i) => (mesh.regions?.[i] === index ? sum + area : sum), 0);
}

/** Faults of a surface's make-up, in words; empty for one closed, manifold, connected surface. */
export function surfaceFaults(mesh: TriMesh): string[] {
	const faults: string[] = [];
	if (mesh.positions.some((x) => !Number.isFinite(x))) faults.push('a position is not a number');
	if (mesh.regions?.length !== mesh.indices.length / 3) faults.push('regions do not match triangles');
	const count = mesh.positions.length / 3;
	const directed = new Set<number>();
	for (let f = 0; f < mesh.indices.length; f += 3)
		for (let k = 0; k < 3; k++) {
			const key = mesh.indices[f + k] * count + mesh.indices[f + ((k + 1) % 3)];
			if (directed.has(key)) faults.push('an edge is used twice in one direction');
			directed.add(key);
		}
	for (const key of directed) {
		const [a, b] = [Math.floor(key / count), key % count];
		if (a === b) faults.push('a triangle uses a vertex twice');
		if (!directed.has(b * count + a)) faults.push('an edge has one triangle only');
	}
	// connected: flood over vertices
	const parent = Int32Array.from({ length: count }, (_, i) => i);
	const root = (i: number): number => {
		while (parent[i] !== i) i = parent[i] = parent[parent[i]];
		return i;
	};
	for (const key of directed) parent[root(Math.floor(key / count))] = root(key % count);
	const used = new Set([...mesh.indices].map(root));
	if (used.size !== 1) faults.push(`${used.size} pieces`);
	if (new Set(mesh.indices).size !== count) faults.push('a vertex belongs to no triangle');
	return [...new Set(faults)];
}

/** Extent in x and z of the section at height y, mm. */
export function sectionExtent(mesh: TriMesh, y: number): { length_mm: number; width_mm: number } {
	const low = [Infinity, Infinity];
	const high = [-Infinity, -Infinity];
	for (let f = 0; f < mesh.indices.length; f += 3)
		for (let k = 0; k < 3; k++) {
			const [a, b] = [corner(mesh, f, k), corner(mesh, f, (k + 1) % 3)];
			if (a[1] > y === b[1] > y) continue;
			const t = (y - a[1]) / (b[1] - a[1]);
			[0, 2].forEach((axis, i) => {
				const at = a[axis] + (b[axis] - a[axis]) * t;
				low[i] = Math.min(low[i], at);
				high[i] = Math.max(high[i], at);
			});
		}
	return { length_mm: high[0] - low[0], width_mm: high[1] - low[1] };
}

/** The lowest and highest y, mm. */
export function heights(mesh: TriMesh): [number, number] {
	let [low, high] = [Infinity, -Infinity];
	for (let i = 1; i < mesh.positions.length; i += 3) {
		low = Math.min(low, mesh.positions[i]);
		high = Math.max(high, mesh.positions[i]);
	}
	return [low, high];
}
