import { describe, expect, it } from 'vitest';
import { cutSection } from '../../src/lib/domain/measure/cutSection';
import { ellipticCone, roundedCone, stack } from '../unit/mesh/shapes';
import type { TriMesh } from '../../src/lib/domain/mesh/triMesh';
import { demoShapes } from '../unit/compare/demoShapes';

/** Sections against the formulas of school geometry: every figure within 0.5 %, as the measures promise. */
const HEIGHTS = [0.05, 0.2, 0.5, 0.8, 0.95];
const near = (value: number, expected: number) => expect(value / expected).toBeCloseTo(1, 2.3);

describe('a cut across', () => {
	it('a round cone is a circle whose radius shrinks with height', () => {
		const cut = cutSection(ellipticCone(6, 6, [0, 25, 0]));
		for (const at of HEIGHTS) {
			const figures = cut(at * 25)!;
			const r = 6 * (1 - at);
			near(figures.area_mm2, Math.PI * r * r);
			near(figures.length_mm, 2 * r);
			near(figures.width_mm, 2 * r);
			near(figures.ratio, 1);
			expect(figures.shape).toBe('round');
			expect(figures.hollow_mm2).toBe(0);
		}
	});

	it('an oblique elliptic cone is an ellipse of the same proportions at any height', () => {
		const cut = cutSection(ellipticCone(8, 5, [7, 30, 2]));
		for (const at of HEIGHTS) {
			const figures = cut(at * 30)!;
			near(figures.area_mm2, Math.PI * 8 * 5 * (1 - at) ** 2);
			near(figures.length_mm, 16 * (1 - at));
			near(figures.width_mm, 10 * (1 - at));
			near(figures.ratio, 5 / 8);
			expect(figures.shape).toBe('oval');
		}
	});

	it('a hollow cone is a ring: the pulp is taken off the area, not off the length', () => {
		// a cone 30 high of radius 9, and in it one 18 high of radius 5 from the same base
		const outer = ellipticCone(9, 9, [0, 30, 0]);
		const inner = ellipticCone(5, 5, [0, 18, 0]);
		const shift = outer.positions.length / 3;
		const hollow: TriMesh = {
			positions: Float32Array.from([...outer.positions, ...inner.positions]),
			indices: Uint32Array.from([...outer.indices, ...inner.indices.map((i) => i + shift)]),
		};
		const cut = cutSection(hollow);
		for (const height of [1.5, 6, 12, 17]) {
			const figures = cut(height)!;
			const [r, q] = [9 * (1 - height / 30), 5 * (1 - height / 18)];
			near(figures.area_mm2, Math.PI * (r * r - q * q));
			near(figures.hollow_mm2, Math.PI * q * q);
			near(figures.length_mm, 2 * r);
			near(figures.width_mm, 2 * r);
		}
		near(cut(20)!.area_mm2, Math.PI * (9 * (1 - 20 / 30)) ** 2);
		expect(cut(20)!.hollow_mm2).toBe(0);
	});

	it('names a lens and a triangle', () => {
		// lens of two parabolas z = +-2 (1 - (x/5)^2)
		const around = 240;
		const lens = stack(
			[
				{ centre: [0, 0, 0], a: 5, b: 2 },
				{ centre: [0, 10, 0], a: 5, b: 2 },
			],
			around,
			[0, 0, 0],
			[0, 10, 0],
		);
		const triangle: TriMesh = { positions: lens.positions.slice(), indices: lens.indices };
		for (let v = 0; v < around * 2; v++) {
			const t = (2 * Math.PI * (v % around)) / around;
			const x = 5 * Math.cos(t);
			lens.positions[v * 3] = x;
			lens.positions[v * 3 + 2] = Math.sign(Math.sin(t)) * 2 * (1 - (x / 5) ** 2);
			// an equilateral triangle of inradius 3
			const r = 3 / Math.cos(((t + Math.PI / 3) % ((2 * Math.PI) / 3)) - Math.PI / 3);
			triangle.positions[v * 3] = r * Math.cos(t);
			triangle.positions[v * 3 + 2] = r * Math.sin(t);
		}
		const cutLens = cutSection(lens)(5)!;
		expect(cutLens.shape).toBe('blade');
		// two parabolic segments: 2/3 of the box each
		near(cutLens.area_mm2, (2 / 3) * 10 * 4);
		const cutTriangle = cutSection(triangle)(5)!;
		expect(cutTriangle.shape).toBe('triangular');
		// an equilateral triangle of inradius r has area 3 sqrt(3) r^2
		near(cutTriangle.area_mm2, 3 * Math.sqrt(3) * 9);
	});

	it('is empty above the tip and below the base', () => {
		const cut = cutSection(roundedCone(5, 0.3, 1));
		expect(cut(-0.5)).toBeNull();
		expect(cut(100)).toBeNull();
	});

	it('says of the demo teeth what their measures say', async () => {
		for (const { mesh, measures } of await demoShapes(4)) {
			const cut = cutSection(mesh);
			for (const told of measures.sections) {
				const figures = cut(told.at * measures.axialHeight_mm)!;
				expect(figures.area_mm2 / told.area_mm2).toBeCloseTo(1, 3);
				expect(figures.length_mm / told.length_mm).toBeCloseTo(1, 3);
				expect(figures.width_mm / told.width_mm).toBeCloseTo(1, 3);
				expect(figures.shape).toBe(told.shape);
			}
		}
	});
});
