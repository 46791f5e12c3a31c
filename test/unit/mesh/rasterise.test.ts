import { describe, expect, it } from 'vitest';
import { rasterise, type RasteriseOptions } from '../../../src/lib/domain/mesh/rasterise';
import { REGIONS, regionIndex, type Region } from '../../../src/lib/domain/mesh/triMesh';
import { ellipticCone, sphere, stack } from './shapes';

const colours = Object.fromEntries(REGIONS.map((region) => [region, [0.85, 0.8, 0.68]])) as unknown as Record<
	Region,
	[number, number, number]
>;
const options: RasteriseOptions = {
	width: 120,
	height: 120,
	view: { yaw_deg: 0, tilt_deg: 0 },
	margin: 0.1,
	colours,
};

const alphaAt = (picture: Uint8ClampedArray, x: number, y: number): number => picture[(y * 120 + x) * 4 + 3];
const lightAt = (picture: Uint8ClampedArray, x: number, y: number): number =>
	picture[(y * 120 + x) * 4] + picture[(y * 120 + x) * 4 + 1] + picture[(y * 120 + x) * 4 + 2];

describe('rasterise', () => {
	it('covers the disc of a sphere inside the margin, with a soft edge and clear corners', () => {
		const picture = rasterise(sphere(9, 96, 48), options);
		let covered = 0;
		for (let i = 3; i < picture.length; i += 4) covered += picture[i] / 255;
		expect(covered / (Math.PI * 48 ** 2)).toBeCloseTo(1, 1.5);
		for (const corner of [0, 119]) expect(alphaAt(picture, corner, corner)).toBe(0);
		expect(alphaAt(picture, 60, 60)).toBe(255);
		const edge = [...picture.filter((_, i) => i % 4 === 3)].filter((a) => a > 0 && a < 255);
		expect(edge.length).toBeGreaterThan(100);
	});

	it('lights from the upper left', () => {
		const picture = rasterise(sphere(9, 96, 48), options);
		expect(lightAt(picture, 40, 40)).toBeGreaterThan(1.4 * lightAt(picture, 82, 82));
	});

	it('has a highlight brighter than the enamel round it', () => {
		const picture = rasterise(sphere(9, 96, 48), options);
		let brightest = 0;
		for (let i = 0; i < picture.length; i += 4) brightest = Math.max(brightest, picture[i + 2]);
		expect(brightest).toBeGreaterThan(picture[(60 * 120 + 60) * 4 + 2] + 25);
	});

	it('stands the tip up, and shows distal at the right at yaw 0 and at the left at 180', () => {
		const leaning = ellipticCone(10, 6, [14, 40, 0], 60, 30);
		const topOf = (picture: Uint8ClampedArray): number => {
			const row = Array.from({ length: 120 }, (_, y) => y).find((y) =>
				Array.from({ length: 120 }, (_, x) => x).some((x) => alphaAt(picture, x, y) > 60),
			)!;
			return Array.from({ length: 120 }, (_, x) => x).find((x) => alphaAt(picture, x, row) > 60)!;
		};
		expect(topOf(rasterise(leaning, options))).toBeGreaterThan(65);
		expect(topOf(rasterise(leaning, { ...options, view: { yaw_deg: 180, tilt_deg: 0 } }))).toBeLessThan(55);
	});

	it('hides what lies behind', () => {
		// a small body in front of, then behind, a large one of another colour
		const rings = (z: number, a: number) =>
			[-1, 0, 1].map((y) => ({ centre: [0, y * a, z] as const, a, b: 0.2 }));
		const plate = (z: number, a: number) => stack(rings(z, a), 24, [0, -a, z], [0, a, z]);
		const scene = (z: number) => {
			const [back, front] = [plate(0, 4), plate(z, 1)];
			const regions = new Uint8Array((back.indices.length + front.indices.length) / 3);
			regions.fill(regionIndex('root'), back.indices.length / 3);
			return {
				positions: Float32Array.of(...back.positions, ...front.positions),
				indices: Uint32Array.of(...back.indices, ...front.indices.map((i) => i + back.positions.length / 3)),
				regions,
			};
		};
		const twoColours = { ...options, colours: { ...colours, root: [0.5, 0.05, 0.05] as const } };
		const greenAtCentre = (z: number) => rasterise(scene(z), twoColours)[(60 * 120 + 60) * 4 + 1];
		expect(greenAtCentre(2)).toBeLessThan(110);
		expect(greenAtCentre(-2)).toBeGreaterThan(130);
	});

	it('darkens where the occlusion says so', () => {
		const mesh = sphere(9, 96, 48);
		const closed = new Float32Array(mesh.positions.length / 3).fill(0.2);
		const dark = rasterise(mesh, { ...options, occlusion: closed });
		const open = rasterise(mesh, options);
		expect(lightAt(dark, 80, 80)).toBeLessThan(0.8 * lightAt(open, 80, 80));
	});
});
