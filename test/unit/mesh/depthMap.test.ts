import { describe, expect, it } from 'vitest';
import { depthMap } from '../../../src/lib/domain/mesh/depthMap';
import { drawingAxes, DRAWN_VIEWS } from '../../../src/lib/domain/mesh/drawingAxes';
import { vec3 } from '../../../src/lib/domain/vec3';
import { sphere } from './shapes';

describe('depthMap', () => {
	it('of a ball sees its near half, as deep as the ball is there', () => {
		const map = depthMap(sphere(5, 128, 64), drawingAxes().side, 200);
		let seen = 0;
		for (let j = 0; j < map.height; j++) {
			for (let i = 0; i < map.width; i++) {
				const depth = map.depth[j * map.width + i];
				expect(depth === -Infinity).toBe(map.triangle[j * map.width + i] < 0);
				if (depth === -Infinity) continue;
				seen++;
				const x = map.origin_mm[0] + (i + 0.5) * map.cell_mm;
				const y = map.origin_mm[1] + (j + 0.5) * map.cell_mm;
				if (Math.hypot(x, y) < 4.8)
					expect(Math.abs(depth - Math.sqrt(25 - x * x - y * y))).toBeLessThan(0.05);
			}
		}
		expect(Math.abs((seen * map.cell_mm ** 2) / (Math.PI * 25) - 1)).toBeLessThan(0.01);
	});

	it('of nothing is one empty cell', () => {
		const none = { positions: new Float32Array(0), indices: new Uint32Array(0) };
		expect(depthMap(none, drawingAxes().tip, 100)).toMatchObject({ width: 1, height: 1 });
	});
});

describe('drawingAxes', () => {
	it('are right-handed and unmirrored for teeth of both sides', () => {
		for (const labial of ['+z', '-z'] as const) {
			const axes = drawingAxes(labial);
			for (const name of DRAWN_VIEWS) {
				const { right, up, towards } = axes[name];
				vec3.cross(right, up).forEach((x, k) => expect(x).toBeCloseTo(towards[k], 12));
			}
			// one looks at the labial face, at the mesial edge, at the tip
			const z = labial === '+z' ? 1 : -1;
			expect(axes.side.towards[2]).toBe(z);
			expect(axes.front.towards[0]).toBe(-1);
			expect(axes.tip.towards[1]).toBe(1);
			// the tip view has labial downwards
			expect(axes.tip.up[2]).toBe(-z);
		}
	});
});
