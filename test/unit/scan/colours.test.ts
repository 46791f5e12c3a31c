import { Document, type Texture } from '@gltf-transform/core';
import { KHRTextureTransform } from '@gltf-transform/extensions';
import { validateBytes } from 'gltf-validator';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { paintedSurface } from '../../../src/lib/server/prepare/paintedSurface';
import { readPicture } from '../../../src/lib/server/scan/readPicture';
import { readScan, type Scan } from '../../../src/lib/server/scan/readScan';
import { gltfDocument, gltfIo } from './gltfWriters';

type Colour = [number, number, number];
const RED: Colour = [200, 30, 20];
const GREEN: Colour = [20, 150, 40];
const BLUE: Colour = [30, 40, 180];
const WHITE: Colour = [240, 240, 230];

/** A picture of four squares: red and green above, blue and white below. */
async function squares(size = 64, kind: 'png' | 'jpeg' | 'webp' = 'png'): Promise<Uint8Array> {
	const pixels = new Uint8Array(size * size * 3);
	for (let y = 0; y < size; y++) {
		for (let x = 0; x < size; x++) {
			const [left, top] = [x < size / 2, y < size / 2];
			pixels.set(top ? (left ? RED : GREEN) : left ? BLUE : WHITE, (y * size + x) * 3);
		}
	}
	const picture = sharp(pixels, { raw: { width: size, height: size, channels: 3 } });
	return new Uint8Array(await picture.toFormat(kind, { quality: 100 }).toBuffer());
}

/** A sheet from 0 to 1 m in x and y in `cells` x `cells` squares; its picture lies on it upright, unless moved. */
function sheet(cells = 4): { doc: Document; positions: Float32Array } {
	const positions: number[] = [];
	const indices: number[] = [];
	for (let j = 0; j <= cells; j++) for (let i = 0; i <= cells; i++) positions.push(i / cells, j / cells, 0);
	for (let j = 0; j < cells; j++) {
		for (let i = 0; i < cells; i++) {
			const a = j * (cells + 1) + i;
			indices.push(a, a + 1, a + cells + 2, a, a + cells + 2, a + cells + 1);
		}
	}
	const mesh = { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
	return { doc: gltfDocument([{ mesh }]), positions: mesh.positions };
}

async function textured(
	picture: Uint8Array,
	change: (doc: Document, texture: Texture) => void = () => undefined,
) {
	const { doc, positions } = sheet();
	const uv = new Float32Array((positions.length / 3) * 2);
	// glTF counts v downwards
	for (let i = 0; i < uv.length / 2; i++) uv.set([positions[i * 3], 1 - positions[i * 3 + 1]], i * 2);
	const [primitive] = doc.getRoot().listMeshes()[0].listPrimitives();
	const buffer = doc.getRoot().listBuffers()[0];
	primitive.setAttribute('TEXCOORD_0', doc.createAccessor().setType('VEC2').setArray(uv).setBuffer(buffer));
	const texture = doc.createTexture().setImage(picture as Uint8Array<ArrayBuffer>);
	const head = [...picture.subarray(0, 2)];
	texture.setMimeType(head[0] === 0xff ? 'image/jpeg' : head[0] === 0x89 ? 'image/png' : 'image/webp');
	primitive.setMaterial(doc.createMaterial().setBaseColorTexture(texture));
	change(doc, texture);
	return (await gltfIo()).registerExtensions([KHRTextureTransform]).writeBinary(doc);
}

async function scanOf(
	bytes: Uint8Array,
	file = 'scan.glb',
	sibling?: Record<string, Uint8Array>,
): Promise<Scan> {
	const read = await readScan(bytes, file, 'm', {
		openPicture: readPicture,
		sibling: (name) => Promise.resolve(sibling?.[name] ?? null),
	});
	if (!read.ok) throw new Error(read.problem.message);
	return read.value;
}

/** Colour of the painted surface at a place, mm. */
function colourAt(scan: Scan, x: number, y: number): Colour {
	const painted = paintedSurface(scan);
	if (!painted) throw new Error('no colour');
	const { positions } = painted.mesh;
	let nearest = 0;
	let best = Infinity;
	for (let i = 0; i < positions.length / 3; i++) {
		const far = Math.hypot(positions[i * 3] - x, positions[i * 3 + 1] - y);
		if (far < best) [best, nearest] = [far, i];
	}
	expect(best).toBeLessThan(10);
	return [...painted.colours.subarray(nearest * 3, nearest * 3 + 3)] as Colour;
}
/** In the middle of the quarters: left and right above, left and right below. */
const quarters = (scan: Scan): Colour[] => [
	colourAt(scan, 250, 750),
	colourAt(scan, 750, 750),
	colourAt(scan, 250, 250),
	colourAt(scan, 750, 250),
];
const near = (found: Colour[], wanted: Colour[], within = 2): void => {
	found.forEach((colour, i) =>
		colour.forEach((value, k) => expect(Math.abs(value - wanted[i][k])).toBeLessThanOrEqual(within)),
	);
};

describe('colours of a scan', () => {
	it.each(['png', 'jpeg'] as const)(
		'are taken from the %s within a GLB, where each point lies on it',
		async (kind) => {
			const glb = await textured(await squares(64, kind));
			const { issues } = await validateBytes(glb);
			expect(issues.numErrors).toBe(0);
			near(quarters(await scanOf(glb)), [RED, GREEN, BLUE, WHITE], kind === 'png' ? 0 : 8);
		},
	);

	it('are finer than the triangles: the picture is followed within them', async () => {
		const painted = paintedSurface(await scanOf(await textured(await squares())))!;
		expect(painted.mesh.indices.length / 3).toBeGreaterThan(30_000);
		// 3.9 mm beside the border of red and green, in the middle of a triangle of 250 mm
		const scan = await scanOf(await textured(await squares(256)));
		near([colourAt(scan, 490, 870), colourAt(scan, 510, 870)], [RED, GREEN], 0);
	});

	it('follow a picture that is moved, turned and scaled (example of KHR_texture_transform: its lower left quarter, turned)', async () => {
		const moved = async (offset: [number, number], rotation: number, scale: [number, number]) => {
			const glb = await textured(await squares(), (doc) => {
				const transform = doc
					.createExtension(KHRTextureTransform)
					.createTransform()
					.setOffset(offset)
					.setRotation(rotation)
					.setScale(scale);
				const [material] = doc.getRoot().listMaterials();
				material.getBaseColorTextureInfo()!.setExtension('KHR_texture_transform', transform);
			});
			return scanOf(glb);
		};
		const corner = await moved([0, 1], Math.PI / 2, [0.5, 0.5]);
		// all of it comes from the lower left quarter, away from its borders, which blend
		near([colourAt(corner, 500, 500), colourAt(corner, 250, 750)], [BLUE, BLUE], 0);
		// half a picture on: what is right comes to the left
		near(quarters(await moved([0.5, 0], 0, [1, 1])), [GREEN, RED, WHITE, BLUE], 0);
		// "This example inverts the T axis"
		near(quarters(await moved([0, 1], 0, [1, -1])), [BLUE, WHITE, RED, GREEN], 0);
	});

	it('are multiplied by the material’s factor and the corners’ own colours, in linear light', async () => {
		const glb = await textured(await squares(), (doc) => {
			doc.getRoot().listMaterials()[0].setBaseColorFactor([0.5, 0.5, 0.5, 1]);
		});
		// IEC 61966-2-1: linear 0.5 of white (255) is 188
		const half = (value: number): number => {
			const linear = ((value / 255 + 0.055) / 1.055) ** 2.4 / 2;
			return 255 * (1.055 * linear ** (1 / 2.4) - 0.055);
		};
		const [, , , white] = quarters(await scanOf(glb));
		near([white], [WHITE.map(half) as Colour], 2);
	});

	it('come from two materials, one of them without a picture', async () => {
		const glb = await textured(await squares(), (doc) => {
			const mesh = doc.getRoot().listMeshes()[0];
			const [first] = mesh.listPrimitives();
			const plain = doc.createMaterial().setBaseColorFactor([0.2, 0.2, 0.2, 1]);
			const accessor = first.getAttribute('POSITION')!.clone();
			accessor.setArray(
				accessor
					.getArray()!
					.map((value, i) => (i % 3 === 0 ? value + 1 : value)) as Float32Array<ArrayBuffer>,
			);
			mesh.addPrimitive(
				doc
					.createPrimitive()
					.setIndices(first.getIndices())
					.setAttribute('POSITION', accessor)
					.setMaterial(plain),
			);
		});
		const scan = await scanOf(glb);
		near(quarters(scan), [RED, GREEN, BLUE, WHITE], 0);
		// linear 0.2: 255 * (1.055 * 0.2 ** (1 / 2.4) - 0.055)
		near([colourAt(scan, 1750, 500)], [[124, 124, 124]], 0);
	});

	it('come from a picture beside a .gltf or within its text', async () => {
		const io = await gltfIo();
		const picture = await squares();
		const { json, resources } = await io.writeJSON(await io.readBinary(await textured(picture)));
		const named = (uri: string) => {
			const copy = structuredClone(json);
			copy.images![0].uri = uri;
			return new TextEncoder().encode(JSON.stringify(copy));
		};
		const [, buffer] = Object.entries(resources).find(([name]) => name.endsWith('.bin'))!;
		const files = { [json.buffers![0].uri!]: buffer, 'colour map.png': picture };
		const inText = `data:image/png;base64,${Buffer.from(picture).toString('base64')}`;
		for (const uri of ['colour%20map.png', inText])
			near(quarters(await scanOf(named(uri), 'scan.gltf', files)), [RED, GREEN, BLUE, WHITE], 0);
		for (const uri of ['missing.png', '../colour map.png', 'https://example.org/a.png']) {
			const scan = await scanOf(named(uri), 'scan.gltf', files);
			expect(scan.warnings[0].code).toBe('colour-unreadable');
			expect(paintedSurface(scan)).toBeNull();
		}
	});

	it('are read from points, and one colour for all is none', () => {
		const mesh = { positions: Float32Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0), indices: Uint32Array.of(0, 1, 2) };
		const two = paintedSurface({ mesh, colours: Uint8Array.from([...RED, ...GREEN, ...BLUE]) });
		expect([...two!.colours]).toEqual([...RED, ...GREEN, ...BLUE]);
		expect(paintedSurface({ mesh, colours: new Uint8Array(9).fill(200) })).toBeNull();
		expect(paintedSurface({ mesh })).toBeNull();
	});
});

describe('pictures that are hostile or broken cost the colour, not the scan', () => {
	/** A PNG that announces its size in its head and has next to nothing behind it (PNG specification, 11.2.2). */
	function announced(width: number, height: number): Uint8Array {
		const bytes = new Uint8Array(64);
		const view = new DataView(bytes.buffer);
		bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
		view.setUint32(8, 13);
		bytes.set(new TextEncoder().encode('IHDR'), 12);
		view.setUint32(16, width);
		view.setUint32(20, height);
		bytes.set([8, 2, 0, 0, 0], 24);
		view.setUint32(29, crc(bytes.subarray(12, 29)));
		return bytes;
	}
	/** CRC of the PNG specification, annex D. */
	function crc(bytes: Uint8Array): number {
		let c = 0xffffffff;
		for (const byte of bytes) {
			c ^= byte;
			for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
		}
		return ~c >>> 0;
	}
	const text = (words: string) => new TextEncoder().encode(words);
	const pictures = async (): Promise<[string, Uint8Array, RegExp][]> => {
		const sound = await squares(256);
		const jpeg = await squares(256, 'jpeg');
		const bomb = await sharp({ create: { width: 9000, height: 9000, channels: 3, background: '#333' } })
			.png({ compressionLevel: 9 })
			.toBuffer();
		return [
			['20,000 x 20,000 in its head', announced(20_000, 20_000), /pixels|damaged/],
			['2^31 - 1 in its head', announced(2 ** 31 - 1, 2 ** 31 - 1), /pixels|damaged/],
			['a size of 0', announced(0, 0), /damaged/],
			['81 million pixels in little', new Uint8Array(bomb), /9000 x 9000 pixels/],
			['a PNG cut off', sound.subarray(0, 60), /damaged/],
			['a JPEG cut off', jpeg.subarray(0, 300), /damaged/],
			[
				'noise after a head',
				Uint8Array.from({ length: 500 }, (_, i) => (i < 8 ? sound[i] : (i * 131) % 251)),
				/damaged/,
			],
			[
				'an SVG',
				text(
					'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="file:///etc/passwd"/></svg>',
				),
				/neither a JPEG/,
			],
			['a GIF', text('GIF89a..............'), /neither a JPEG/],
			['nothing', new Uint8Array(0), /neither a JPEG/],
		];
	};

	it('refuses each with a reason, within bounds', async () => {
		for (const [, bytes, why] of await pictures()) {
			const before = process.memoryUsage.rss();
			const start = process.cpuUsage();
			await expect(readPicture(bytes)).rejects.toThrow(why);
			expect((process.memoryUsage.rss() - before) / 2 ** 20).toBeLessThan(300);
			expect(process.cpuUsage(start).user / 1000).toBeLessThan(2000);
		}
	});

	it('still gives the surface, with a warning in a whole sentence', async () => {
		for (const [, bytes] of (await pictures()).filter(([, { length }]) => length > 0)) {
			const scan = await scanOf(await textured(bytes));
			expect(scan.mesh.indices.length).toBe(96);
			expect(paintedSurface(scan)).toBeNull();
			const [warning] = scan.warnings;
			expect(warning.code).toBe('colour-unreadable');
			expect(warning.message).toMatch(
				/^The picture that colours its surface cannot be used: [^A-Z].*[^.]\.$/,
			);
		}
	});

	it('does not mind materials, textures and places that are nonsense', async () => {
		const io = await gltfIo();
		const { json, resources } = await io.writeJSON(await io.readBinary(await textured(await squares())));
		type Json = Record<string, { [key: string]: unknown }[]>;
		const broken: [string, (json: Json) => void][] = [
			['a material that is not there', (j) => ((j.meshes[0].primitives as Json[])[0].material = 7 as never)],
			['materials that are no list', (j) => (j.materials = 'red' as never)],
			['a texture that is not there', (j) => (j.textures = [])],
			['an image that is not there', (j) => (j.images = [])],
			['a sampler that is not there', (j) => (j.textures[0].sampler = 99)],
			[
				'a texture set of nonsense',
				(j) => (j.materials[0].pbrMetallicRoughness = { baseColorTexture: { index: 0, texCoord: 'x' } }),
			],
			[
				'a transform of nonsense',
				(j) =>
					(j.materials[0].pbrMetallicRoughness = {
						baseColorTexture: {
							index: 0,
							extensions: { KHR_texture_transform: { scale: 'a', offset: [1], rotation: null } },
						},
					}),
			],
			[
				'factors of nonsense',
				(j) => (j.materials[0].pbrMetallicRoughness = { baseColorFactor: ['a', -1, 1e9] }),
			],
			[
				'places of three numbers',
				(j) => {
					const p = (j.meshes[0].primitives as unknown as { attributes: Record<string, number> }[])[0];
					p.attributes.TEXCOORD_0 = p.attributes.POSITION;
				},
			],
		];
		for (const [, change] of broken) {
			const copy = structuredClone(json) as unknown as Json;
			change(copy);
			const scan = await scanOf(text(JSON.stringify(copy)), 'scan.gltf', resources);
			expect(scan.mesh.indices.length).toBe(96);
		}
		// places that are no numbers, or far outside, on a sound picture
		const glb = await textured(await squares(), (doc) => {
			const uv = doc.getRoot().listMeshes()[0].listPrimitives()[0].getAttribute('TEXCOORD_0')!;
			uv.setArray(
				uv.getArray()!.map((value, i) => [NaN, Infinity, 1e30, -3.25][i % 4]) as Float32Array<ArrayBuffer>,
			);
		});
		const painted = paintedSurface(await scanOf(glb));
		for (const value of painted?.colours ?? [0]) expect(value).toBeLessThanOrEqual(255);
	});

	it('does not open pictures where only measures are wanted', async () => {
		const read = await readScan(await textured(announced(20_000, 20_000)), 'scan.glb');
		expect(read.ok && [read.value.paint, read.value.colours]).toEqual([undefined, undefined]);
		expect(read.ok && read.value.warnings.map(({ code }) => code)).toEqual(['unlikely-size']);
	});
});
