import { describe, expect, it } from 'vitest';
import type { DepthMap } from '../../../src/lib/domain/mesh/depthMap';
import { stipple } from '../../../src/lib/domain/mesh/stipple';

/** A plate of 200 x 100 cells of 0.1 mm, left half triangle 0, right half triangle 1, border free. */
function plate(): DepthMap {
	const [width, height] = [208, 108];
	const triangle = new Int32Array(width * height).fill(-1);
	for (let j = 4; j < 104; j++) for (let i = 4; i < 204; i++) triangle[j * width + i] = i < 104 ? 0 : 1;
	return {
		width,
		height,
		cell_mm: 0.1,
		origin_mm: [-10.4, -5.4],
		depth: Float32Array.from(triangle, (t) => (t < 0 ? -Infinity : 0)),
		triangle,
	};
}

const points = (flat: number[]): [number, number][] =>
	Array.from({ length: flat.length / 2 }, (_, i) => [flat[i * 2], flat[i * 2 + 1]]);

describe('stipple', () => {
	it('keeps dots as far apart as asked and leaves no hole between them', () => {
		const dots = points(stipple(plate(), () => 1, 0.6));
		for (const [i, a] of dots.entries())
			for (const b of dots.slice(i + 1)) expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(0.599);
		// every place has a dot within twice that distance
		for (let x = -9; x < 9; x += 0.5)
			for (let y = -4; y < 4; y += 0.5)
				expect(Math.min(...dots.map((dot) => Math.hypot(dot[0] - x, dot[1] - y)))).toBeLessThan(1.2);
		for (const [x, y] of dots) {
			expect(Math.abs(x)).toBeLessThan(10);
			expect(Math.abs(y)).toBeLessThan(5);
		}
	});

	it('puts dots in proportion to the tone', () => {
		const dots = points(stipple(plate(), (triangle) => (triangle === 0 ? 0.25 : 1), 0.4));
		const left = dots.filter(([x]) => x < 0).length;
		const ratio = left / (dots.length - left);
		expect(ratio).toBeGreaterThan(0.2);
		expect(ratio).toBeLessThan(0.32);
	});

	it('leaves paper white, and comes to an end without a distance', () => {
		expect(stipple(plate(), () => 0, 0.4)).toEqual([]);
		expect(stipple(plate(), () => 1, 0)).toEqual([]);
	});
});
