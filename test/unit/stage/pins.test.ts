import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { Pose } from '../../../src/lib/stage/api';
import { eyeOf, facing, lensOf, placeInView, rayAt, stepAlong } from '../../../src/lib/stage/pins';
import { place } from '../../../src/lib/stage/placement';
import { betweenStands, quarterTurned, rotationOf, standingBounds } from '../../../src/lib/stage/stand';
import { vec3, type Vec3 } from '../../../src/lib/domain/vec3';

const bounds = { min: [-6, -8, -4], max: [10, 30, 5] } as const;
const upright: Pose = { yaw_deg: 0, tilt_deg: 0, zoom: 1 };
const poses = fc.record({
	yaw_deg: fc.double({ min: -180, max: 180, noNaN: true }),
	tilt_deg: fc.double({ min: -100, max: 100, noNaN: true }),
	zoom: fc.constant(1),
});
const points = fc.tuple(
	fc.double({ min: -6, max: 10, noNaN: true }),
	fc.double({ min: -8, max: 30, noNaN: true }),
	fc.double({ min: -4, max: 5, noNaN: true }),
);
const turned = (pose: Pose, v: Vec3): Vec3 => {
	const out = new Vector3(...v).applyMatrix4(rotationOf(pose));
	return [out.x, out.y, out.z];
};
const near = (a: Vec3, b: Vec3) => expect(vec3.distance(a, b)).toBeLessThan(1e-6);

describe('placeInView', () => {
	it('shows the middle of the bounds in the middle, and a mm beside it as pxPerMm', () => {
		const lens = lensOf(bounds, upright, 12, 800, 600);
		expect(placeInView(lens, [2, 11, 0.5])).toEqual({ x: 400, y: 300 });
		const beside = placeInView(lens, [3, 11, 0.5]);
		expect(beside?.x).toBeCloseTo(412, 9);
		expect(placeInView(lens, [2, 12, 0.5])?.y).toBeCloseTo(288, 9);
	});
	it('draws what is nearer larger', () => {
		const lens = lensOf(bounds, upright, 12, 800, 600);
		const far = placeInView(lens, [10, 11, -4])!;
		const close = placeInView(lens, [10, 11, 5])!;
		expect(close.x - 400).toBeGreaterThan(far.x - 400);
	});
	it('gives nothing behind the eye', () => {
		const lens = lensOf(bounds, upright, 12, 800, 600);
		expect(placeInView(lens, [2, 11, 10_000])).toBeNull();
	});
	it('stays inside what the painter makes room for', () => {
		fc.assert(
			fc.property(poses, points, (pose, point) => {
				const lens = lensOf(bounds, pose, 12, 800, 600);
				const line = { points: new Float32Array(24) };
				const { tooth, turn } = place(bounds, line, pose, 12, [-0.6, 0.6, 0.5]);
				expect(turn.equals(lens.turn)).toBe(true);
				const { x, y } = placeInView(lens, point)!;
				expect(x - 400).toBeGreaterThanOrEqual(tooth.left - 1e-6);
				expect(x - 400).toBeLessThanOrEqual(tooth.right + 1e-6);
				expect(y - 300).toBeGreaterThanOrEqual(tooth.top - 1e-6);
				expect(y - 300).toBeLessThanOrEqual(tooth.bottom + 1e-6);
			}),
		);
	});
});

describe('rayAt', () => {
	it('passes through every point that is seen at its place', () => {
		fc.assert(
			fc.property(poses, points, (pose, point) => {
				const lens = lensOf(bounds, pose, 9, 500, 700);
				const { x, y } = placeInView(lens, point)!;
				const { origin, direction } = rayAt(lens, x, y);
				near(origin, eyeOf(lens));
				const way = vec3.subtract(point, origin);
				const off = vec3.norm(vec3.cross(way, direction));
				expect(off).toBeLessThan(1e-6);
				expect(vec3.dot(way, direction)).toBeGreaterThan(0);
			}),
		);
	});
});

describe('facing', () => {
	it('brings any direction to look at the viewer, however the tooth stands', () => {
		const stands = ['left', 'right', 'over', 'back', 'top-near', 'top-far'] as const;
		fc.assert(
			fc.property(poses, points, fc.constantFrom(...stands), (pose, point, turn) => {
				fc.pre(vec3.norm(point) > 0.1);
				const direction = vec3.normalise(point);
				for (const from of [pose, quarterTurned(pose, turn)]) {
					const to = facing(from, direction);
					near(turned(to, direction), [0, 0, 1]);
					expect(to.zoom).toBe(from.zoom);
					expect(Math.abs(to.tilt_deg)).toBeLessThanOrEqual(90);
				}
			}),
		);
	});
	it('keeps the yaw when it looks straight at the tip', () => {
		expect(facing({ ...upright, yaw_deg: 40 }, [0, 1, 0])).toMatchObject({ yaw_deg: 40, tilt_deg: 90 });
	});
});

describe('quarterTurned', () => {
	it('turns what is seen about the axes of the screen', () => {
		const up: Vec3 = [0, 1, 0];
		near(turned(quarterTurned(upright, 'left'), up), [-1, 0, 0]);
		near(turned(quarterTurned(upright, 'right'), up), [1, 0, 0]);
		near(turned(quarterTurned(upright, 'over'), up), [0, -1, 0]);
		near(turned(quarterTurned(upright, 'top-near'), up), [0, 0, 1]);
		near(turned(quarterTurned(upright, 'top-far'), up), [0, 0, -1]);
		near(turned(quarterTurned(upright, 'back'), up), up);
		near(turned(quarterTurned(upright, 'back'), [1, 0, 0]), [-1, 0, 0]);
	});
	it('squares a slanting view first, and four quarters lead back', () => {
		const slanting: Pose = { yaw_deg: -34, tilt_deg: 10, zoom: 2 };
		let pose: Pose = slanting;
		for (let i = 0; i < 4; i++) pose = quarterTurned(pose, 'left');
		near(turned(pose, [0, 1, 0]), [0, 1, 0]);
		near(turned(pose, [1, 0, 0]), [1, 0, 0]);
		expect(pose).toMatchObject({ yaw_deg: 0, tilt_deg: 0, zoom: 2 });
	});
	it('makes room for a tooth that lies down', () => {
		const { stand } = quarterTurned(upright, 'left');
		const lying = standingBounds(bounds, stand);
		expect(lying.max[0] - lying.min[0]).toBeCloseTo(38, 9);
		expect(lying.max[1] - lying.min[1]).toBeCloseTo(16, 9);
		expect(lying.max[2] - lying.min[2]).toBeCloseTo(9, 9);
		expect(standingBounds(bounds, undefined)).toBe(bounds);
	});
	it('lies half-way between two stands half-way through', () => {
		const { stand } = quarterTurned(upright, 'left');
		const half = betweenStands(undefined, stand, 0.5);
		near(turned({ ...upright, stand: half }, [0, 1, 0]), [-Math.SQRT1_2, Math.SQRT1_2, 0]);
		expect(betweenStands(stand, undefined, 1)).toBeUndefined();
	});
});

describe('stepAlong', () => {
	const lens = lensOf(bounds, upright, 10, 400, 400);
	it('goes the whole way along the surface, to the side that is seen', () => {
		const slope = vec3.normalise([1, 0, 1]);
		const to = stepAlong(lens, [0, 0, 0], slope, 0.1, 0);
		expect(vec3.distance(to, [0, 0, 0])).toBeCloseTo(0.1, 12);
		near(to, vec3.scale(vec3.normalise([1, 0, -1]), 0.1));
	});
	it('goes up on the screen, whichever way the tooth stands', () => {
		const lying = lensOf(bounds, quarterTurned(upright, 'left'), 10, 400, 400);
		near(stepAlong(lying, [0, 0, 0], [0, 0, 1], 0, 0.1), [0.1, 0, 0]);
	});
	it('keeps its direction where the surface is seen edge-on', () => {
		near(stepAlong(lens, [0, 0, 0], [1, 0, 0], 0.1, 0), [0.1, 0, 0]);
	});
	it('stays where it is without a step', () => {
		near(stepAlong(lens, [1, 2, 3], [1, 0, 0], 0, 0), [1, 2, 3]);
	});
});
