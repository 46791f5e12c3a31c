import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { triangulatePolygon } from '../../../src/lib/server/scan/triangulatePolygon';
import { rotation } from '../mesh/shapes';

type Flat = [number, number][];
type Point = [number, number, number];

/** Gauss's area formula for a polygon in the plane, positive when counter-clockwise. */
const shoelace = (outline: Flat): number =>
	outline.reduce((sum, [x, y], i) => {
		const [u, v] = outline[(i + 1) % outline.length];
		return sum + (x * v - u * y) / 2;
	}, 0);

const turnedInSpace = (outline: Flat, angles: Point): Point[] =>
	outline.map(([x, y]) => rotation(...angles).map((row) => row[0] * x + row[1] * y + 3 * row[2]) as Point);

function cut(points: Point[]): [number, number, number][] {
	const triangles: [number, number, number][] = [];
	triangulatePolygon(points.flat(), points.length, (a, b, c) => triangles.push([a, b, c]));
	return triangles;
}

/** The triangles cover the outline once, the same way round, and use every point. */
function expectRight(outline: Flat, angles: Point): void {
	const triangles = cut(turnedInSpace(outline, angles));
	expect(triangles.length).toBe(outline.length - 2);
	let sum = 0;
	for (const triangle of triangles) {
		const area = shoelace(triangle.map((i) => outline[i]));
		expect(area * Math.sign(shoelace(outline))).toBeGreaterThan(-1e-9);
		sum += area;
	}
	expect(sum).toBeCloseTo(shoelace(outline), 6);
	// every side of the outline belongs to exactly one triangle, so that neighbours fit
	const edges = triangles.flatMap(([a, b, c]) => [`${a}>${b}`, `${b}>${c}`, `${c}>${a}`]);
	outline.forEach((_, i) => {
		expect(edges.filter((edge) => edge === `${i}>${(i + 1) % outline.length}`)).toHaveLength(1);
	});
}

const SHAPES: Record<string, Flat> = {
	square: [
		[0, 0],
		[2, 0],
		[2, 2],
		[0, 2],
	],
	'dart, dented at corner 1': [
		[0, 0],
		[1, 0.4],
		[2, 0],
		[1, 3],
	],
	'dart, dented at corner 2': [
		[1, 3],
		[0, 0],
		[1, 0.4],
		[2, 0],
	],
	'L with points on its straight sides': [
		[0, 0],
		[1, 0],
		[2, 0],
		[3, 0],
		[3, 1],
		[2, 1],
		[1, 1],
		[1, 2],
		[1, 3],
		[0, 3],
		[0, 2],
		[0, 1],
	],
	comb: [
		[0, 0],
		[7, 0],
		[7, 3],
		[6, 3],
		[6, 1],
		[5, 1],
		[5, 3],
		[4, 3],
		[4, 1],
		[3, 1],
		[3, 3],
		[2, 3],
		[2, 1],
		[1, 1],
		[1, 3],
		[0, 3],
	],
};

describe('triangulatePolygon', () => {
	for (const [name, outline] of Object.entries(SHAPES)) {
		it(`cuts a ${name}, turned any way and wound either way`, () => {
			for (const angles of [
				[0, 0, 0],
				[0.3, 1, 2],
				[Math.PI, 0, 0],
				[0, Math.PI / 2, 0],
			] as Point[]) {
				expectRight(outline, angles);
				expectRight([...outline].reverse(), angles);
			}
		});
	}

	it('cuts star-shaped outlines of 5 to 60 corners (seed 7)', () => {
		fc.assert(
			fc.property(
				fc.array(fc.double({ min: 0.3, max: 2, noNaN: true }), { minLength: 5, maxLength: 60 }),
				fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })),
				(radii, [yaw, pitch]) => {
					const outline = radii.map((r, i): [number, number] => {
						const t = (2 * Math.PI * i) / radii.length;
						return [r * Math.cos(t), r * Math.sin(t)];
					});
					expectRight(outline, [yaw, pitch, 0.4]);
				},
			),
			{ seed: 7, numRuns: 200 },
		);
	});

	it('makes a fan of what crosses itself, with the right number of triangles', () => {
		const bow: Flat = [
			[0, 0],
			[2, 2],
			[2, 0],
			[0, 2],
			[-1, 1],
		];
		expect(cut(turnedInSpace(bow, [0, 0, 0]))).toHaveLength(3);
		const star = Array.from({ length: 5 }, (_, i): [number, number] => [
			Math.cos((4 * Math.PI * i) / 5),
			Math.sin((4 * Math.PI * i) / 5),
		]);
		expect(cut(turnedInSpace(star, [0, 0, 0]))).toHaveLength(3);
	});
});
