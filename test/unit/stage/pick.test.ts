import { BufferAttribute, BufferGeometry } from 'three';
import { describe, expect, it } from 'vitest';
import { vec3, type Vec3 } from '../../../src/lib/domain/vec3';
import { createPicker, pickerOf } from '../../../src/lib/stage/pick';
import { lensOf, rayAt } from '../../../src/lib/stage/pins';
import { ball } from '../server/samples';

/** A ball of radius 10 mm about the origin, as the stage holds it. */
const RINGS = 96;
function ballGeometry(): BufferGeometry {
	const { positions, indices } = ball(RINGS);
	const geometry = new BufferGeometry();
	geometry.setAttribute('position', new BufferAttribute(positions, 3));
	geometry.setIndex(new BufferAttribute(indices, 1));
	return geometry;
}
/** How far flat triangles may lie inside the ball: the sagitta of an edge, R (1 - cos(pi / (2 rings))) and as much across. */
const SAGITTA_mm = 2 * 10 * (1 - Math.cos(Math.PI / RINGS / 2)) + 1e-4;
const bounds = { min: [-10, -10, -10], max: [10, 10, 10] } as const;

describe('createPicker', () => {
	const geometry = ballGeometry();
	const before = geometry.index!.array.slice();
	const picker = createPicker(geometry);

	it('leaves the triangles in their order', () => {
		expect(geometry.index!.array).toEqual(before);
	});

	it('meets the near side of a ball where the formula says', () => {
		const lens = lensOf(bounds, { yaw_deg: 30, tilt_deg: -20, zoom: 1 }, 20, 600, 600);
		for (const [x, y] of [
			[300, 300],
			[380, 210],
			[150, 400],
		]) {
			const ray = rayAt(lens, x, y);
			// |o + t d| = 10, the smaller t
			const b = vec3.dot(ray.origin, ray.direction);
			const t = -b - Math.sqrt(b * b - vec3.dot(ray.origin, ray.origin) + 100);
			const expected = vec3.add(ray.origin, vec3.scale(ray.direction, t));
			const hit = picker.pick(ray);
			expect(hit).not.toBeNull();
			// a slanting line moves the meeting point farther than the surface itself
			expect(vec3.distance(hit!.point, expected)).toBeLessThan(SAGITTA_mm * 3);
			expect(vec3.dot(hit!.normal, vec3.normalise(expected))).toBeGreaterThan(0.998);
		}
		expect(picker.pick(rayAt(lens, 20, 20))).toBeNull();
	});

	it('sees the inside of an opening too, its normal towards the viewer', () => {
		const hit = picker.pick({ origin: [0, 0, 0], direction: vec3.normalise([1, 0.3, 0.2]) })!;
		expect(vec3.norm(hit.point)).toBeCloseTo(10, 1);
		expect(vec3.dot(hit.normal, hit.point)).toBeLessThan(0);
	});

	it('finds the nearest point from outside and inside', () => {
		for (const from of [
			[13, 5, 2],
			[4, -3, 1],
		] as Vec3[]) {
			const { point, normal } = picker.nearest(from);
			const expected = vec3.scale(vec3.normalise(from), 10);
			expect(vec3.distance(point, expected)).toBeLessThan(0.15);
			expect(vec3.dot(normal, vec3.normalise(from))).toBeGreaterThan(0.995);
		}
	});

	it('tells what the tooth itself hides', () => {
		expect(picker.open([0, 0, 10], [0, 0, 90], 0.05)).toBe(true);
		expect(picker.open([0, 0, -10], [0, 0, 90], 0.05)).toBe(false);
		expect(picker.open([0, 0, 90], [0, 0, 90], 0.05)).toBe(true);
	});

	it('knows the middle of a section and the surface farthest out of it', () => {
		const frame = { origin: [0, 1, 0], u: [1, 0, 0], v: [0, 0, -1], normal: [0, 1, 0] } as const;
		const middle = picker.middleAt(frame, 3)!;
		expect(vec3.distance(middle, [0, 4, 0])).toBeLessThan(0.02);
		const out = picker.outermost(middle, [0, 0, 1])!;
		expect(out.point[1]).toBeCloseTo(4, 6);
		expect(out.point[2]).toBeCloseTo(Math.sqrt(100 - 16), 1);
		expect(out.normal[2]).toBeGreaterThan(0.8);
		expect(picker.middleAt(frame, 40)).toBeNull();
		expect(picker.outermost([0, 40, 0], [0, 1, 0])).toBeNull();
	});
});

describe('pickerOf', () => {
	it('builds one picker a geometry', () => {
		const geometry = ballGeometry();
		expect(pickerOf(geometry)).toBe(pickerOf(geometry));
		expect(pickerOf(geometry)).not.toBe(pickerOf(ballGeometry()));
	});
});
