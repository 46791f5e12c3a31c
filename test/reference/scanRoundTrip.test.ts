import { validateBytes } from 'gltf-validator';
import { Primitive } from '@gltf-transform/core';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../src/lib/domain/mesh/bounds';
import { surfaceArea } from '../../src/lib/domain/mesh/surfaceArea';
import { topology } from '../../src/lib/domain/mesh/topology';
import type { TriMesh } from '../../src/lib/domain/mesh/triMesh';
import { volume } from '../../src/lib/domain/mesh/volume';
import { weld } from '../../src/lib/domain/mesh/weld';
import { readScan, type Scan, type ScanUnits } from '../../src/lib/server/scan/readScan';
import { ellipticCone, placed, sphere } from '../unit/mesh/shapes';
import { dracoGlb, glb, gltfDocument, gltfIo, meshoptGlb, quantisedGlb } from '../unit/scan/gltfWriters';
import {
	asPolygons,
	fanned,
	obj,
	ply,
	polygonCone,
	stlBinary,
	stlText,
	text,
	type PlyEncoding,
} from '../unit/scan/writers';

async function read(bytes: Uint8Array, file: string, units?: ScanUnits): Promise<Scan> {
	const result = await readScan(bytes, file, units);
	if (!result.ok) throw new Error(JSON.stringify(result.problem));
	return result.value;
}

/** Same surface: area, volume and box agree to `share`, and a closed one is still closed. */
function expectSame(found: TriMesh, wanted: TriMesh, share = 2e-6): void {
	const size = bounds(wanted).diagonal;
	expect(found.indices.length).toBe(wanted.indices.length);
	expect(Math.abs(surfaceArea(found) / surfaceArea(wanted) - 1)).toBeLessThan(share);
	expect(Math.abs(volume(found) / volume(wanted) - 1)).toBeLessThan(share);
	for (const end of ['min', 'max'] as const) {
		for (let axis = 0; axis < 3; axis++) {
			expect(Math.abs(bounds(found)[end][axis] - bounds(wanted)[end][axis])).toBeLessThan(size * share);
		}
	}
	expect(topology(weld(found)).watertight).toBe(true);
}

const ball = placed(sphere(6, 48, 24), [0.4, 1.1, -0.2], 1, [3, -20, 8]);
const cone = placed(ellipticCone(5, 3.5, [2, 21, -1], 48, 20), [0.3, -0.8, 2], 1, [-7, 4, 11]);
const polygons = polygonCone(5, 21);
const metres = (mesh: TriMesh): TriMesh => ({ ...mesh, positions: mesh.positions.map((v) => v / 1000) });

describe('closed surfaces through every format, against area, volume and box of what was written', () => {
	for (const [name, mesh] of [
		['sphere', ball],
		['oblique cone', cone],
	] as const) {
		it(`${name}: STL, binary, binary that begins with "solid", and text with every line end`, async () => {
			expectSame((await read(stlBinary(mesh), 'a.stl', 'mm')).mesh, mesh);
			expectSame((await read(stlBinary(mesh, 'solid tooth facet normal'), 'a.stl', 'mm')).mesh, mesh);
			for (const lineEnd of ['\n', '\r\n', '\r']) {
				expectSame((await read(text(stlText(mesh, lineEnd)), 'a.stl', 'mm')).mesh, mesh);
			}
		});

		for (const encoding of ['ascii', 'binary_little_endian', 'binary_big_endian'] as PlyEncoding[]) {
			it(`${name}: PLY ${encoding}`, async () => {
				const written = asPolygons(mesh);
				for (const type of ['float', 'double'] as const) {
					for (const burdened of [false, true]) {
						for (const facesFirst of [false, true]) {
							const bytes = ply(written, { encoding, type, burdened, facesFirst });
							expectSame((await read(bytes, 'a.ply', 'mm')).mesh, mesh);
						}
					}
				}
			});
		}

		it(`${name}: OBJ with numbers from either end, slashes, objects and every line end`, async () => {
			for (const writing of [
				{},
				{ negative: true },
				{ slashes: true, objects: 4 },
				{ negative: true, slashes: true, lineEnd: '\r\n' },
				{ lineEnd: '\r' },
			]) {
				expectSame((await read(text(obj(asPolygons(mesh), writing)), 'a.obj', 'mm')).mesh, mesh);
			}
		});

		it(`${name}: GLB plain, without indices, quantised, meshopt, Draco, all valid by the Khronos validator`, async () => {
			const small = metres(mesh);
			const files: [string, Uint8Array, number][] = [
				['plain', await glb(gltfDocument([{ mesh: small }])), 2e-6],
				['unindexed', await glb(gltfDocument([{ mesh: small, unindexed: true }])), 2e-6],
				// 16 bits over the longest side: steps of 1.5e-5 of it
				['quantised', await quantisedGlb(small), 4e-5],
				['meshopt', await meshoptGlb(small, false), 2e-6],
				['meshopt, quantised', await meshoptGlb(small, true), 4e-5],
				['Draco by edges', await dracoGlb(small, 'edgebreaker'), 4e-5],
				['Draco in order', await dracoGlb(small, 'sequential'), 4e-5],
			];
			for (const [kind, bytes, share] of files) {
				const report = await validateBytes(bytes);
				expect(report.issues.numErrors, kind).toBe(0);
				const scan = await read(bytes, 'a.glb');
				expect(scan.units).toBe('m');
				expectSame(scan.mesh, mesh, share);
			}
		});
	}

	it('polygons of 4 and 24 corners with colours: PLY in all three writings, and OBJ', async () => {
		const wanted = fanned(polygons);
		const files: [string, Uint8Array][] = [
			...(['ascii', 'binary_little_endian', 'binary_big_endian'] as const).map(
				(encoding): [string, Uint8Array] => ['a.ply', ply(polygons, { encoding })],
			),
			['a.ply', ply(polygons, { encoding: 'binary_little_endian', facesFirst: true, burdened: true })],
			['a.ply', ply(polygons, { encoding: 'ascii', lineEnd: '\r' })],
			['a.obj', text(obj(polygons))],
			['a.obj', text(obj(polygons, { negative: true, slashes: true, objects: 3 }))],
		];
		for (const [file, bytes] of files) {
			const scan = await read(bytes, file, 'mm');
			expectSame(scan.mesh, wanted);
			expect([...(scan.colours ?? [])]).toEqual(polygons.colours);
		}
	});

	it('the cone of polygons has the area and volume of the pyramid on a regular polygon', async () => {
		// pyramid over a regular n-gon of circumradius r: base n/2 r^2 sin(2 pi/n), volume base h/3, side by slant height
		const [n, r, h] = [24, 5, 21];
		const base = (n / 2) * r * r * Math.sin((2 * Math.PI) / n);
		const inner = r * Math.cos(Math.PI / n);
		const side = n * r * Math.sin(Math.PI / n) * Math.hypot(h, inner);
		const { mesh } = await read(text(obj(polygonCone(r, h, n))), 'a.obj', 'mm');
		expect(volume(mesh)).toBeCloseTo((base * h) / 3, 3);
		expect(surfaceArea(mesh)).toBeCloseTo(base + side, 3);
	});

	it('GLB with sparse data, triangle strips and fans, several meshes', async () => {
		const small = metres(polygonTriangles());
		const sparse = await glb(gltfDocument([{ mesh: small, sparse: true }]));
		expect((await validateBytes(sparse)).issues.numErrors).toBe(0);
		expectSame((await read(sparse, 'a.glb')).mesh, polygonTriangles());

		// a prism of 24 sides: its wall as one strip, its ends as fans
		const n = 24;
		const ring = (y: number): number[] =>
			Array.from({ length: n }, (_, j) => {
				const t = (2 * Math.PI * j) / n;
				return [0.005 * Math.cos(t), y, 0.005 * Math.sin(t)];
			}).flat();
		const positions = Float32Array.from([...ring(0), ...ring(0.02), 0, 0, 0, 0, 0.02, 0]);
		const part = (order: number[], mode: number) => ({
			mesh: { positions, indices: Uint32Array.from(order) },
			mode,
		});
		const wall = Array.from({ length: n + 1 }, (_, j) => [j % n, n + (j % n)]).flat();
		const bottom = [2 * n, ...Array.from({ length: n + 1 }, (_, j) => j % n)];
		const top = [2 * n + 1, ...Array.from({ length: n + 1 }, (_, j) => n + ((n - (j % n)) % n))];
		const prism = await glb(
			gltfDocument([
				part(wall, Primitive.Mode.TRIANGLE_STRIP),
				part(bottom, Primitive.Mode.TRIANGLE_FAN),
				part(top, Primitive.Mode.TRIANGLE_FAN),
				part([0, 1], Primitive.Mode.LINES),
			]),
		);
		expect((await validateBytes(prism)).issues.numErrors).toBe(0);
		const { mesh } = await read(prism, 'a.glb');
		const base = (n / 2) * 25 * Math.sin((2 * Math.PI) / n);
		const wallArea = n * 2 * 5 * Math.sin(Math.PI / n) * 20;
		expect(mesh.indices.length / 3).toBe(4 * n);
		expect(volume(mesh) / (base * 20)).toBeCloseTo(1, 5);
		expect(surfaceArea(mesh) / (2 * base + wallArea)).toBeCloseTo(1, 5);
		const shape = topology(weld(mesh));
		expect([shape.watertight, shape.oriented]).toEqual([true, true]);
	});

	it('GLB under nested nodes that move, turn and mirror it keeps its area, volume and outward side', async () => {
		for (const levels of [1, 2, 7]) {
			const doc = gltfDocument([{ mesh: metres(cone) }], levels);
			const { mesh, warnings } = await read(await glb(doc), 'a.glb');
			expect(surfaceArea(mesh) / surfaceArea(cone)).toBeCloseTo(1, 5);
			expect(volume(mesh) / volume(cone)).toBeCloseTo(1, 5);
			// right by itself, not because it was turned round afterwards
			expect(warnings).toEqual([]);
			// the other library's own idea of where things are
			const { getBounds } = await import('@gltf-transform/core');
			const box = getBounds(doc.getRoot().listScenes()[0]);
			for (let axis = 0; axis < 3; axis++) {
				expect(bounds(mesh).max[axis]).toBeCloseTo(box.max[axis] * 1000, 3);
			}
		}
	});

	it('glTF with its data inside, and with its data in a file beside it', async () => {
		const io = await gltfIo();
		const { json, resources } = await io.writeJSON(gltfDocument([{ mesh: metres(ball) }]), {});
		const [[uri, data]] = Object.entries(resources);
		const bytes = text(JSON.stringify(json));
		const sibling = async (name: string) => (name === uri ? data : null);
		const beside = await readScan(bytes, 'a.gltf', undefined, { sibling });
		if (!beside.ok) throw new Error(beside.problem.message);
		expectSame(beside.value.mesh, ball);
		json.buffers![0].uri = `data:application/octet-stream;base64,${Buffer.from(data).toString('base64')}`;
		expectSame((await read(text(JSON.stringify(json)), 'a.gltf')).mesh, ball);
	});

	it('colours of a GLB are linear light and come out in the curve of screens', async () => {
		// IEC 61966-2-1: 128 of 255 is ((128 / 255 + 0.055) / 1.055) ^ 2.4 = 0.2159 of full light
		const colours = Array.from({ length: ball.positions.length }, (_, i) => [0, 0.2159, 1][i % 3]);
		const scan = await read(await glb(gltfDocument([{ mesh: metres(ball), colours }])), 'a.glb');
		expect([...scan.colours!.subarray(0, 3)]).toEqual([0, 128, 255]);
	});
});

function polygonTriangles(): TriMesh {
	return fanned(polygonCone(5, 21));
}
