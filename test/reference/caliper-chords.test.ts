import { BufferAttribute, BufferGeometry } from 'three';
import { describe, expect, it } from 'vitest';
import { caliper } from '../../src/lib/domain/measure/caliper';
import type { TriMesh } from '../../src/lib/domain/mesh/triMesh';
import type { Vec3 } from '../../src/lib/domain/vec3';
import { createPicker } from '../../src/lib/stage/pick';
import { ellipticCone, sphere } from '../unit/mesh/shapes';

/** Ends of a caliper set near a surface snap to it; the chord is then what geometry says. */
function snapped(mesh: TriMesh) {
	const geometry = new BufferGeometry();
	geometry.setAttribute('position', new BufferAttribute(mesh.positions.slice(), 3));
	geometry.setIndex(new BufferAttribute(mesh.indices.slice(), 1));
	const picker = createPicker(geometry);
	return (a: Vec3, b: Vec3) =>
		caliper(
			{ point: picker.nearest(a).point, placed_mm: 0.05 },
			{ point: picker.nearest(b).point, placed_mm: 0.05 },
		).length_mm;
}

describe('the caliper on known shapes', () => {
	it('spans a ball of radius 12 mm: 2 R sin(angle / 2)', () => {
		const span = snapped(sphere(12, 256, 128));
		for (const angle_deg of [20, 60, 90, 180]) {
			const t = (angle_deg * Math.PI) / 180;
			// the ends lie off the surface, one outside, one within
			const length = span([14, 0, 0], [11 * Math.cos(t), 11 * Math.sin(t) * 0.8, 11 * Math.sin(t) * 0.6]);
			expect(length / (24 * Math.sin(t / 2))).toBeCloseTo(1, 2.3);
		}
	});

	it('spans a cone 24 mm high, 5 mm radius: tip to rim, across at any height, up a side', () => {
		const span = snapped(ellipticCone(5, 5, [0, 24, 0]));
		expect(span([0, 26, 0], [5.5, -0.5, 0])).toBeCloseTo(Math.hypot(24, 5), 1);
		// a point beside the middle of the side falls on it at a right angle: both ends at the same height, same offset
		for (const y of [4, 12, 20]) {
			const r = 5 * (1 - y / 24);
			expect(span([r, y, 0], [-r, y, 0])).toBeCloseTo(2 * r, 1);
		}
		expect(span([4.5, 2.4, 0], [0.5, 21.6, 0])).toBeCloseTo(Math.hypot(4, 19.2), 1);
	});

	it('gives no more digits than the ends were placed with', () => {
		const at = (placed_mm: number) =>
			caliper({ point: [0, 0, 0], placed_mm }, { point: [3, 4, 0], placed_mm });
		expect(at(0.05).length_mm).toBe(5);
		// errors add up as squares
		expect(at(0.3).precision_mm).toBeCloseTo(0.3 * Math.SQRT2, 9);
		expect([1, 0.4, 0.1, 0.01, 0.0001].map((mm) => at(mm).decimals)).toEqual([0, 0, 1, 2, 2]);
	});
});
