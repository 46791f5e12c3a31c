import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { regionIndex } from '../../../src/lib/domain/mesh/triMesh';
import { writeGlb } from '../../../src/lib/server/prepare/writeGlb';
import { looksClosed, parseShape } from '../../../src/lib/stage/loadShape';
import { surfaceTone, valueNoise } from '../../../src/lib/stage/surfaceTone';

/** A box from (-2, -1, -3) to (2, 9, 3) mm, normals along its diagonals. */
const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [i & 1 ? 2 : -2, i & 2 ? 9 : -1, i & 4 ? 3 : -3]);
const boxIndices = Uint32Array.from(
	[
		[0, 2, 1, 1, 2, 3],
		[4, 5, 6, 5, 7, 6],
		[0, 1, 4, 1, 5, 4],
		[2, 6, 3, 3, 6, 7],
		[0, 4, 2, 2, 4, 6],
		[1, 3, 5, 3, 7, 5],
	].flat(),
);
const box = (region: number, openness: number) => ({
	positions: Float32Array.from(corners.flat()),
	normals: Float32Array.from(
		corners.flatMap(([x, y, z]) =>
			[Math.sign(x), Math.sign(y - 4), Math.sign(z)].map((s) => s / Math.sqrt(3)),
		),
	),
	regions: new Uint8Array(8).fill(region),
	openness: new Uint8Array(8).fill(openness),
	indices: boxIndices,
});
const bytes = async (...levels: ReturnType<typeof box>[]) => {
	const glb = await writeGlb(levels);
	return glb.buffer.slice(glb.byteOffset, glb.byteOffset + glb.byteLength) as ArrayBuffer;
};

describe('a prepared shape as the server writes it', () => {
	test('comes back in mm with both levels, normals, occlusion and regions', async () => {
		const shape = await parseShape(await bytes(box(regionIndex('root'), 204), box(regionIndex('pit'), 51)));
		for (const [geometry, region, openness] of [
			[shape.full, 'root', 204],
			[shape.light, 'pit', 51],
		] as const) {
			geometry.computeBoundingBox();
			const { min, max } = geometry.boundingBox!;
			[...min.toArray(), ...max.toArray()].forEach((v, i) =>
				expect(v).toBeCloseTo([-2, -1, -3, 2, 9, 3][i], 3),
			);
			expect(geometry.index!.count).toBe(36);
			const surface = geometry.getAttribute('surface');
			const normal = geometry.getAttribute('normal');
			for (let i = 0; i < surface.count; i++) {
				expect(surface.getX(i)).toBe(openness);
				expect(surface.getZ(i)).toBe(regionIndex(region));
				expect(Math.hypot(normal.getX(i), normal.getY(i), normal.getZ(i))).toBeCloseTo(1, 4);
				expect(Math.sign(normal.getX(i))).toBe(Math.sign(geometry.getAttribute('position').getX(i)));
			}
		}
		expect(shape.closed).toBe(true);
	});

	test('has the scan’s own colours as the server read them, or none', async () => {
		const colours = Uint8Array.from({ length: 24 }, (_, i) => [0, 12, 37, 100, 200, 255][i % 6]);
		const { full } = await parseShape(await bytes({ ...box(0, 255), colours } as ReturnType<typeof box>));
		const [position, colour] = [full.getAttribute('position'), full.getAttribute('colour')];
		for (let i = 0; i < position.count; i++) {
			const corner = corners.findIndex((at) =>
				at.every((v, k) => Math.abs(v - position.getComponent(i, k)) < 1e-3),
			);
			for (let k = 0; k < 3; k++)
				expect(Math.round(255 * colour.getComponent(i, k))).toBe(colours[corner * 3 + k]);
			expect(colour.getW(i)).toBe(1);
		}
		expect((await parseShape(await bytes(box(0, 255)))).full.getAttribute('colour')).toBeUndefined();
	});

	test('with one level only is drawn with it at rest and in motion', async () => {
		const shape = await parseShape(await bytes(box(0, 255)));
		expect(shape.light).toBe(shape.full);
	});

	test('what is no GLB is refused', async () => {
		const text = await readFile(new URL('./loadShape.test.ts', import.meta.url));
		await expect(parseShape(text.buffer.slice(0, 400) as ArrayBuffer)).rejects.toThrow();
	});
});

describe('closed or open', () => {
	const { positions } = box(0, 255);
	test('a box is closed, without one face it is open', () => {
		expect(looksClosed(positions, boxIndices)).toBe(true);
		expect(looksClosed(positions, boxIndices.slice(6))).toBe(false);
	});
	test('nothing is not closed', () => {
		expect(looksClosed([], [])).toBe(false);
	});
});

describe('unevenness of colour', () => {
	test('noise is smooth, repeatable and between 0 and 1', () => {
		for (let i = 0; i < 500; i++) {
			const [x, y, z] = [i * 0.37, i * -0.21, i * 0.11];
			const a = valueNoise(x, y, z);
			expect(a).toBeGreaterThanOrEqual(0);
			expect(a).toBeLessThanOrEqual(1);
			expect(valueNoise(x, y, z)).toBe(a);
			expect(Math.abs(valueNoise(x + 1e-4, y, z) - a)).toBeLessThan(1e-3);
		}
	});
	test('leaves occlusion and region alone and does not depend on the size of the tooth', () => {
		const { positions } = box(0, 255);
		const big = positions.map((v) => v * 4);
		const [a, b] = [positions, big].map((p) => {
			const surface = new Uint8Array(32).map((_, i) => (i % 4 === 0 ? 200 : i % 4 === 2 ? 5 : 0));
			surfaceTone(p, surface);
			return surface;
		});
		expect([...a]).toEqual([...b]);
		a.forEach((v, i) => {
			if (i % 4 === 0) expect(v).toBe(200);
			if (i % 4 === 2) expect(v).toBe(5);
		});
		expect(new Set(a.filter((_, i) => i % 4 === 1)).size).toBeGreaterThan(1);
	});
});
