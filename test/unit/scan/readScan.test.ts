import { Document, NodeIO } from '@gltf-transform/core';
import { describe, expect, it } from 'vitest';
import { triangleCount, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { surfaceArea } from '../../../src/lib/domain/mesh/surfaceArea';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { MM_PER_UNIT, readScan, type ScanUnits } from '../../../src/lib/server/scan/readScan';

/** Corners and outward faces of a box 1 x 2 x 3. */
const CORNERS = [
	[0, 0, 0],
	[1, 0, 0],
	[1, 2, 0],
	[0, 2, 0],
	[0, 0, 3],
	[1, 0, 3],
	[1, 2, 3],
	[0, 2, 3],
];
const FACES = [
	[0, 3, 2],
	[0, 2, 1],
	[4, 5, 6],
	[4, 6, 7],
	[0, 1, 5],
	[0, 5, 4],
	[2, 3, 7],
	[2, 7, 6],
	[1, 2, 6],
	[1, 6, 5],
	[0, 4, 7],
	[0, 7, 3],
];
const text = (value: string): Uint8Array => new TextEncoder().encode(value);

function binaryStl(): Uint8Array {
	const bytes = new Uint8Array(84 + FACES.length * 50);
	const view = new DataView(bytes.buffer);
	view.setUint32(80, FACES.length, true);
	FACES.forEach((face, f) => {
		face.forEach((corner, c) =>
			CORNERS[corner].forEach((v, i) => view.setFloat32(84 + f * 50 + 12 + c * 12 + i * 4, v, true)),
		);
	});
	return bytes;
}

const asciiStl = (): Uint8Array =>
	text(
		`solid box\n${FACES.map(
			(face) =>
				`facet normal 0 0 0\nouter loop\n${face.map((c) => `vertex ${CORNERS[c].join(' ')}`).join('\n')}\nendloop\nendfacet`,
		).join('\n')}\nendsolid box\n`,
	);

const ply = (): Uint8Array =>
	text(
		`ply\nformat ascii 1.0\nelement vertex 8\nproperty float x\nproperty float y\nproperty float z\nelement face 12\nproperty list uchar int vertex_indices\nend_header\n${CORNERS.map((c) => c.join(' ')).join('\n')}\n${FACES.map((f) => `3 ${f.join(' ')}`).join('\n')}\n`,
	);

const obj = (): Uint8Array =>
	text(
		`${CORNERS.map((c) => `v ${c.join(' ')}`).join('\n')}\no one\n${FACES.slice(0, 6)
			.map((f) => `f ${f.map((i) => i + 1).join(' ')}`)
			.join('\n')}\no two\n${FACES.slice(6)
			.map((f) => `f ${f.map((i) => i + 1).join(' ')}`)
			.join('\n')}\n`,
	);

/** The box twice as large, mirrored and moved by its node, as most programs write it. */
async function glb(scale: [number, number, number] = [1, 1, 1]): Promise<Uint8Array> {
	const doc = new Document();
	const buffer = doc.createBuffer();
	const primitive = doc
		.createPrimitive()
		.setIndices(doc.createAccessor().setArray(Uint16Array.from(FACES.flat())).setBuffer(buffer))
		.setAttribute(
			'POSITION',
			doc.createAccessor().setType('VEC3').setArray(Float32Array.from(CORNERS.flat())).setBuffer(buffer),
		);
	const points = doc
		.createPrimitive()
		.setMode(0)
		.setAttribute(
			'POSITION',
			doc
				.createAccessor()
				.setType('VEC3')
				.setArray(Float32Array.from([9, 9, 9]))
				.setBuffer(buffer),
		);
	const mesh = doc.createMesh().addPrimitive(primitive).addPrimitive(points);
	const child = doc.createNode().setMesh(mesh).setScale(scale);
	const parent = doc.createNode().setTranslation([5, 0, 0]).setRotation([0, Math.SQRT1_2, 0, Math.SQRT1_2]);
	doc.getRoot().setDefaultScene(doc.createScene().addChild(parent.addChild(child)));
	return new NodeIO().writeBinary(doc);
}

async function read(bytes: Uint8Array, file: string, units: ScanUnits = 'mm'): Promise<TriMesh> {
	const result = await readScan(bytes, file, units);
	if (!result.ok) throw new Error(JSON.stringify(result.problem));
	return result.value.mesh;
}

describe('readScan', () => {
	it('reads the same box from every format', async () => {
		for (const [file, bytes] of [
			['scan.stl', binaryStl()],
			['SCAN.STL', asciiStl()],
			['scan.ply', ply()],
			['scan.obj', obj()],
			['scan.glb', await glb()],
		] as const) {
			const mesh = await read(bytes, file);
			expect(triangleCount(mesh), file).toBe(12);
			expect(volume(mesh), file).toBeCloseTo(6, 5);
			expect(surfaceArea(mesh), file).toBeCloseTo(22, 5);
		}
	});

	it('turns units into millimetres', async () => {
		// SI prefixes (BIPM, The International System of Units, 9th edition, table 7); 1 in = 25.4 mm exactly
		expect(MM_PER_UNIT).toEqual({ um: 1e-3, mm: 1, cm: 10, m: 1e3, in: 25.4 });
		for (const units of ['um', 'mm', 'cm', 'm', 'in'] as const) {
			const mesh = await read(binaryStl(), 'scan.stl', units);
			expect(Math.max(...mesh.positions)).toBeCloseTo(3 * MM_PER_UNIT[units], 4);
		}
	});

	it('applies the transforms of GLB nodes, and keeps a mirrored one facing outwards', async () => {
		const mesh = await read(await glb([-2, 2, 2]), 'scan.glb');
		expect(volume(mesh)).toBeCloseTo(48, 4);
		// a quarter turn about y takes +z to +x: x runs from 5 to 5 + 2 * 3
		const xs = Array.from(mesh.positions).filter((_, i) => i % 3 === 0);
		expect([Math.min(...xs), Math.max(...xs)]).toEqual([expect.closeTo(5, 5), expect.closeTo(11, 5)]);
	});

	it('says what is wrong with a file', async () => {
		const codeOf = async (bytes: Uint8Array, file: string): Promise<string> => {
			const result = await readScan(bytes, file, 'mm');
			return result.ok ? 'ok' : result.problem.code;
		};
		expect(await codeOf(binaryStl(), 'scan.jpg')).toBe('unknown-format');
		expect(await codeOf(text('not a model'), 'scan.glb')).toBe('not-a-mesh');
		expect(await codeOf((await glb()).slice(0, 300), 'scan.glb')).toBe('truncated');
		expect(await codeOf(text('not a model'), 'scan.ply')).toBe('not-a-mesh');
		expect(await codeOf(text('v 0 0 0\nv 1 0 0\n'), 'scan.obj')).toBe('no-triangles');
		expect(await codeOf(new Uint8Array(0), 'scan.obj')).toBe('empty');
		expect(await codeOf(binaryStl().slice(0, 200), 'scan.stl')).toBe('truncated');
		const notFinite = binaryStl();
		new DataView(notFinite.buffer).setFloat32(84 + 12, Number.NaN, true);
		expect(await codeOf(notFinite, 'scan.stl')).toBe('not-a-number');
	});

	it('takes colours of an OBJ as shares of 1 or as 0 to 255', async () => {
		for (const full of [1, 255]) {
			const words = CORNERS.map((c) => `v ${c.join(' ')} ${full} ${full * 0.2} 0`).join('\n');
			const result = await readScan(text(`${words}\nf 1 2 3\nf 1 3 4\n`), 'scan.obj', 'mm');
			expect(result.ok && [...result.value.colours!.subarray(0, 3)]).toEqual([255, 51, 0]);
		}
	});

	it('asks for nothing that triangles do not need: pictures, animations, unknown looks', async () => {
		const bytes = await glb();
		const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
		const end = 20 + view.getUint32(12, true);
		const json = JSON.parse(new TextDecoder().decode(bytes.subarray(20, end))) as Record<string, unknown>;
		const data = Buffer.from(bytes.subarray(end + 8)).toString('base64');
		const gltf = {
			...json,
			buffers: [
				{ ...(json.buffers as object[])[0], uri: `data:application/octet-stream;base64,${data}` },
				{ byteLength: 1e9, uri: 'https://localhost/film.bin' },
			],
			images: [{ uri: 'gone.png' }, { bufferView: 99 }],
			textures: [{ source: 12 }],
			animations: [{ channels: 'none' }],
			extensionsRequired: ['KHR_materials_unknown'],
		};
		expect(volume(await read(text(JSON.stringify(gltf)), 'scan.gltf'))).toBeCloseTo(6, 5);
	});
});
