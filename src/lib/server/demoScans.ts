/**
 * Makes the two scan files of the demo exhibit with the museum's own modelling program, flawed as a scanner's files
 * are: noise, small holes, axes of their own, far from the origin; one with invented colours. `demoScans.ts` writes them into content/specimens/
 * and puts their marks into specimen.yaml.
 */
import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { MeshoptSimplifier } from 'meshoptimizer';
import type { CrownMarks } from '../domain/measure/crownMeasures';
import { topology } from '../domain/mesh/topology';
import { triangleCount, type TriMesh } from '../domain/mesh/triMesh';
import { vertexNormals } from '../domain/mesh/vertexNormals';
import type { ToothForm } from '../domain/tooth/form';
import { sculpt } from '../domain/tooth/sculpt';
import { vec3, type Vec3 } from '../domain/vec3';
import { demoColours } from './demoColours';
import { editSpecimen } from './editSpecimen';
import { writeAtomically } from './writeAtomically';

export interface DemoScan {
	specimen: string;
	file: string;
	form: ToothForm;
	triangles: number;
	/** standard deviation of the noise along the surface's normal, mm */
	noise_mm: number;
	/** small holes to tear, each this wide, mm */
	holes_mm: readonly number[];
	/** turns about x, y and z, one after the other */
	turns_deg: Vec3;
	/** where the tooth's own origin comes to lie, mm */
	moved_mm: Vec3;
	/** millimetres in a unit of the file */
	mmPerUnit: number;
	/** invented colours, in a PLY */
	coloured?: boolean;
	seed: number;
}

export const DEMO_SCANS: readonly DemoScan[] = [
	{
		specimen: 'skm-0181',
		file: 'scan.stl',
		form: {
			crownHeight_mm: 31,
			baseLength_mm: 12,
			baseWidth_mm: 11.4,
			sections: [{ at: 0, shape: 'round' }],
			taper: 'cone',
			curve: { distal_deg: 20, lingual_deg: 8, startsAt: 0.1 },
			tipRadius_mm: 0.6,
			carinae: [],
			ridges: { count: 12, height_mm: 0.55, sides: 'all', from: 0, to: 0.85, alternating: false },
			root: { state: 'full', length_mm: 34, swelling: 1.35, folded: false },
		},
		triangles: 12_600,
		noise_mm: 0.02,
		holes_mm: [1.6, 1.1, 2.2],
		turns_deg: [112, -35, 61],
		moved_mm: [84.2, -41.7, 130.5],
		mmPerUnit: 1,
		seed: 181,
	},
	{
		specimen: 'skm-0186',
		file: 'scan.ply',
		form: {
			crownHeight_mm: 27,
			baseLength_mm: 12.6,
			baseWidth_mm: 11.2,
			sections: [
				{ at: 0, shape: 'round' },
				{ at: 0.6, shape: 'oval', widthFactor: 0.95 },
			],
			taper: 'cone',
			curve: { distal_deg: 34, lingual_deg: 8, startsAt: 0.1 },
			tipRadius_mm: 0.6,
			carinae: [
				{ where: 'mesial', prominence_mm: 0.45, from: 0.05 },
				{ where: 'distal', prominence_mm: 0.45, from: 0.05 },
			],
			root: { state: 'resorbed', length_mm: 5, pitSide: 'lingual', pitDepth_mm: 4 },
			wear: { tipWornTo_mm: 26.2 },
		},
		triangles: 20_000,
		noise_mm: 0.02,
		holes_mm: [1.3, 0.9],
		turns_deg: [-24, 78, 140],
		moved_mm: [-15.5, 62, 8.3],
		mmPerUnit: 25.4,
		coloured: true,
		seed: 186,
	},
];

/** Bytes of one demo scan and the marks of its crown in the file's own frame, mm. */
export async function demoScan(scan: DemoScan): Promise<{ bytes: Uint8Array; marks: Required<CrownMarks> }> {
	const sculpted = sculpt(scan.form);
	if (!sculpted.ok) throw new Error(`demoScan: ${scan.specimen}: ${sculpted.problem.code}`);
	const random = seeded(scan.seed);
	const fine = await simplified(sculpted.value.mesh, scan.triangles);
	const noisy = torn(rough(fine, scan.noise_mm, random), scan.holes_mm, random);
	const turn = turning(scan.turns_deg);
	const place = (point: Vec3): Vec3 => vec3.add(turn(point), scan.moved_mm);
	const placed = noisy.positions.slice();
	for (let i = 0; i < placed.length; i += 3)
		placed.set(vec3.scale(place([placed[i], placed[i + 1], placed[i + 2]]), 1 / scan.mmPerUnit), i);
	const mesh = { positions: placed, indices: noisy.indices };
	const colours = scan.coloured ? coloursOf(noisy, scan.form.crownHeight_mm) : null;
	const { apex, baseMesial, baseDistal } = sculpted.value.marks;
	return {
		bytes: scan.file.endsWith('.stl') ? binaryStl(mesh) : binaryPly(mesh, colours),
		marks: {
			apex: place(apex),
			baseMesial: place(baseMesial),
			baseDistal: place(baseDistal),
			labial: turn([0, 0, 1]),
		},
	};
}

function coloursOf({ positions: p }: TriMesh, height_mm: number): Uint8Array {
	const colours = new Uint8Array(p.length);
	for (let i = 0; i < p.length; i += 3) colours.set(demoColours([p[i], p[i + 1], p[i + 2]], height_mm), i);
	return colours;
}

async function simplified(mesh: TriMesh, triangles: number): Promise<TriMesh> {
	await MeshoptSimplifier.ready;
	const most = Math.min(triangles, triangleCount(mesh)) * 3;
	const [indices] = MeshoptSimplifier.simplify(mesh.indices, mesh.positions, 3, most, 1);
	const [remap, count] = MeshoptSimplifier.compactMesh(indices);
	const positions = new Float32Array(count * 3);
	remap.forEach((to, from) => {
		if (to < count) positions.set(mesh.positions.subarray(from * 3, from * 3 + 3), to * 3);
	});
	return { positions, indices };
}

/** Moves each corner along its normal by normally distributed noise. */
function rough(mesh: TriMesh, noise_mm: number, random: () => number): TriMesh {
	const normals = vertexNormals(mesh);
	const positions = mesh.positions.slice();
	for (let i = 0; i < positions.length; i += 3) {
		// Box and Muller 1958: two even numbers make a normally distributed one
		const step = noise_mm * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
		for (let axis = 0; axis < 3; axis++) positions[i + axis] += step * normals[i + axis];
	}
	return { positions, indices: mesh.indices };
}

/** Takes the triangles round a few corners out, and what then hangs in the air. */
function torn(mesh: TriMesh, holes_mm: readonly number[], random: () => number): TriMesh {
	const { positions: p } = mesh;
	const at = (vertex: number): Vec3 => [p[vertex * 3], p[vertex * 3 + 1], p[vertex * 3 + 2]];
	const holes = holes_mm.map((width) => ({
		middle: at(mesh.indices[Math.floor(random() * mesh.indices.length)]),
		width,
	}));
	const left: number[] = [];
	for (let t = 0; t < triangleCount(mesh); t++) {
		const corners = [...mesh.indices.subarray(t * 3, t * 3 + 3)];
		const middle = vec3.scale(corners.map(at).reduce(vec3.add), 1 / 3);
		if (holes.every((hole) => vec3.distance(middle, hole.middle) > hole.width / 2)) left.push(...corners);
	}
	const whole = { positions: p, indices: Uint32Array.from(left) };
	const { componentOf, components } = topology(whole);
	const sizes = new Array<number>(components).fill(0);
	for (const piece of componentOf) sizes[piece]++;
	const largest = sizes.indexOf(Math.max(...sizes));
	return {
		positions: p,
		indices: whole.indices.filter((_, k) => componentOf[Math.floor(k / 3)] === largest),
	};
}

function turning(turns_deg: Vec3): (point: Vec3) => Vec3 {
	return (point) => {
		let turned = point;
		turns_deg.forEach((degrees, axis) => {
			const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
			const [a, b] = [(axis + 1) % 3, (axis + 2) % 3];
			const next: [number, number, number] = [...turned];
			next[a] = turned[a] * cos - turned[b] * sin;
			next[b] = turned[a] * sin + turned[b] * cos;
			turned = next;
		});
		return turned;
	};
}

/** The same even numbers from 0 to 1 for the same seed (mulberry32, public domain). */
function seeded(seed: number): () => number {
	let state = seed;
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
	};
}

function binaryStl(mesh: TriMesh): Uint8Array {
	const bytes = new Uint8Array(84 + triangleCount(mesh) * 50);
	bytes.set(new TextEncoder().encode('made by the Skerrow Museum to try its scans; no real object'));
	const view = new DataView(bytes.buffer);
	view.setUint32(80, triangleCount(mesh), true);
	mesh.indices.forEach((vertex, k) => {
		const at = 84 + Math.floor(k / 3) * 50 + 12 + (k % 3) * 12;
		for (let axis = 0; axis < 3; axis++)
			view.setFloat32(at + axis * 4, mesh.positions[vertex * 3 + axis], true);
	});
	return bytes;
}

function binaryPly(mesh: TriMesh, colours: Uint8Array | null): Uint8Array {
	const corners = mesh.positions.length / 3;
	const tints = colours ? ['red', 'green', 'blue'].map((name) => `property uchar ${name}\n`).join('') : '';
	const head = new TextEncoder().encode(
		`ply
format binary_little_endian 1.0
comment made by the Skerrow Museum to try its scans; no real object
element vertex ${corners}
property float x
property float y
property float z
${tints}element face ${triangleCount(mesh)}
property list uchar int vertex_indices
end_header
`,
	);
	const record = colours ? 15 : 12;
	const bytes = new Uint8Array(head.length + corners * record + triangleCount(mesh) * 13);
	bytes.set(head);
	const view = new DataView(bytes.buffer);
	mesh.positions.forEach((value, i) => {
		view.setFloat32(head.length + Math.floor(i / 3) * record + (i % 3) * 4, value, true);
	});
	colours?.forEach((value, i) => {
		bytes[head.length + Math.floor(i / 3) * record + 12 + (i % 3)] = value;
	});
	const faces = head.length + corners * record;
	mesh.indices.forEach((vertex, k) => {
		const face = faces + Math.floor(k / 3) * 13;
		bytes[face] = 3;
		view.setInt32(face + 1 + (k % 3) * 4, vertex, true);
	});
	return bytes;
}

async function main(contentDir: string): Promise<void> {
	for (const scan of DEMO_SCANS) {
		const { bytes, marks } = await demoScan(scan);
		const folder = join(contentDir, 'specimens', scan.specimen);
		await writeAtomically(join(folder, scan.file), bytes);
		const yaml = join(folder, 'specimen.yaml');
		const rounded = (point: Vec3): Vec3 => point.map((value) => Number(value.toFixed(2))) as unknown as Vec3;
		const edited = editSpecimen(await readFile(yaml, 'utf8'), {
			crown: {
				apex: rounded(marks.apex),
				baseMesial: rounded(marks.baseMesial),
				baseDistal: rounded(marks.baseDistal),
				labial: rounded(marks.labial),
			},
		});
		if (!edited.ok) throw new Error(`${scan.specimen}: ${edited.problem.message}`);
		await writeAtomically(yaml, edited.value);
		console.log(`${scan.specimen}/${scan.file}: ${bytes.length} bytes`);
	}
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
	await main(resolve(process.argv[2] ?? 'content'));
}
