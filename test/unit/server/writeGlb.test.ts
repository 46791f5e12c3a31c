import { validateBytes } from 'gltf-validator';
import { describe, expect, it } from 'vitest';
import { readGlb } from '../../../src/lib/server/prepare/readGlb';
import { simplifyFull, simplifyLight } from '../../../src/lib/server/prepare/simplify';
import { writeGlb } from '../../../src/lib/server/prepare/writeGlb';
import { ball } from './samples';

describe('writeGlb', () => {
	it('writes a file that the Khronos validator finds no error in', async () => {
		const glb = await writeGlb([ball(40), ball(12)]);
		const report = await validateBytes(glb);
		expect(report.issues.messages.filter(({ severity }) => severity === 0)).toEqual([]);
		expect(report.issues.numErrors).toBe(0);
		expect(report.info.extensionsRequired).toEqual(
			expect.arrayContaining(['EXT_meshopt_compression', 'KHR_mesh_quantization']),
		);
	});

	it('keeps shape, normals, light and regions of both levels', async () => {
		const levels = [ball(40), ball(12)];
		const glb = await writeGlb(levels);
		for (const [number, level] of levels.entries()) {
			const read = await readGlb(glb, number);
			expect(read.indices.length).toBe(level.indices.length);
			for (let i = 0; i < read.regions.length; i++) {
				const p = read.positions.subarray(i * 3, i * 3 + 3);
				// 14 bits over 20 mm are 1.2 micrometres; the file must be at least as fine
				expect(Math.abs(Math.hypot(...p) - 10)).toBeLessThan(0.0012);
				expect(read.normals[i * 3 + 1]).toBeCloseTo(p[1] / 10, 3);
				expect(read.regions[i]).toBe(p[1] > 1e-3 ? 0 : p[1] < -1e-3 ? 5 : read.regions[i]);
			}
			expect(new Set(read.openness)).toEqual(new Set([255]));
		}
	});

	it('refuses to read a file without the level asked for', async () => {
		const glb = await writeGlb([ball(12)]);
		await expect(readGlb(glb, 1)).rejects.toThrow('readGlb: the file has no complete level-1');
	});
});

describe('simplify', () => {
	it('brings a fine ball to its levels, closed at the border of regions and true to its radius', async () => {
		const fine = ball(200);
		expect(fine.indices.length / 3).toBeGreaterThan(150_000);
		const full = await simplifyFull(fine);
		const light = await simplifyLight(full);
		expect(full.indices.length / 3).toBeLessThanOrEqual(24_000);
		expect(full.indices.length / 3).toBeGreaterThan(10_000);
		expect(light.indices.length / 3).toBeLessThanOrEqual(6_500);
		for (const [level, tolerance] of [
			[full, 0.02],
			[light, 0.06],
		] as const) {
			for (let k = 0; k < level.indices.length; k += 3) {
				const [a, b, c] = level.indices.subarray(k, k + 3);
				expect(level.regions[a]).toBe(level.regions[b]);
				expect(level.regions[a]).toBe(level.regions[c]);
				const middle = [0, 1, 2].map(
					(axis) =>
						(level.positions[a * 3 + axis] + level.positions[b * 3 + axis] + level.positions[c * 3 + axis]) /
						3,
				);
				expect(Math.abs(Math.hypot(...middle) - 10)).toBeLessThan(tolerance);
			}
			expect(openEdges(level.positions, level.indices)).toBe(0);
		}
	});

	it('leaves a mesh that is light already as it is', async () => {
		const small = ball(12);
		expect(await simplifyFull(small)).toBe(small);
	});
});

/** Edges with a triangle on one side only, counting vertices at one place as one. */
function openEdges(positions: Float32Array, indices: Uint32Array): number {
	const place = (i: number): string =>
		positions
			.subarray(i * 3, i * 3 + 3)
			.map((v) => Math.round(v * 1e4))
			.join();
	const edges = new Map<string, number>();
	for (let k = 0; k < indices.length; k += 3) {
		for (let e = 0; e < 3; e++) {
			const from = place(indices[k + e]);
			const to = place(indices[k + ((e + 1) % 3)]);
			const key = from < to ? `${from}|${to}` : `${to}|${from}`;
			edges.set(key, (edges.get(key) ?? 0) + (from < to ? 1 : -1));
		}
	}
	return [...edges.values()].filter((balance) => balance !== 0).length;
}
