import fc from 'fast-check';
import { Matrix4, Vector3 } from 'three';
import { expect, test } from 'vitest';
import { lampFrame } from '../../../src/lib/stage/lamp';
import { lampView } from '../../../src/lib/stage/lampCast';

const bounds = { min: [-6, -10, -5] as const, max: [7, 30, 6] as const };
const turnOf = (yaw: number, tilt: number) =>
	new Matrix4()
		.makeRotationX(tilt)
		.multiply(new Matrix4().makeRotationY(yaw))
		.multiply(new Matrix4().makeTranslation(-0.5, -10, -0.5));
const scene = fc.record({
	azimuth_deg: fc.double({ min: 0, max: 360, noNaN: true }),
	elevation_deg: fc.double({ min: 3, max: 80, noNaN: true }),
	yaw: fc.double({ min: -3, max: 3, noNaN: true }),
	tilt: fc.double({ min: -1.7, max: 1.7, noNaN: true }),
	share: fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: 0, max: 1, noNaN: true }))),
});
const pointAt = (share: number[]) =>
	new Vector3(...share.map((s, i) => bounds.min[i] + s * (bounds.max[i] - bounds.min[i])));

test('everything inside the bounds lies in the map, and the map is not much larger', () => {
	fc.assert(
		fc.property(scene, ({ yaw, tilt, share, ...lamp }) => {
			const { toLamp } = lampView(bounds, turnOf(yaw, tilt), lamp);
			const inside = pointAt(share).applyMatrix4(toLamp);
			for (const v of inside.toArray()) expect(Math.abs(v)).toBeLessThan(1);
			const corners = Array.from({ length: 8 }, (_, i) =>
				pointAt([i & 1, (i >> 1) & 1, i >> 2])
					.applyMatrix4(toLamp)
					.toArray(),
			);
			for (const k of [0, 1, 2])
				expect(Math.max(...corners.map((c) => Math.abs(c[k])))).toBeGreaterThan(0.95);
		}),
	);
});

test('what lies nearer to the lamp is nearer in depth, and on one ray at one place of the map', () => {
	fc.assert(
		fc.property(scene, ({ yaw, tilt, share, ...lamp }) => {
			const turn = turnOf(yaw, tilt);
			const { toLamp } = lampView(bounds, turn, lamp);
			const point = pointAt(share);
			const towards = new Vector3(...lampFrame(lamp).dir).transformDirection(turn.clone().invert());
			const nearer = point.clone().addScaledVector(towards, 2).applyMatrix4(toLamp);
			const here = point.applyMatrix4(toLamp);
			expect(nearer.x).toBeCloseTo(here.x, 6);
			expect(nearer.y).toBeCloseTo(here.y, 6);
			expect(nearer.z).toBeLessThan(here.z);
		}),
	);
});

test('a mm in the map is a mm on the tooth', () => {
	fc.assert(
		fc.property(scene, ({ yaw, tilt, share, ...lamp }) => {
			const turn = turnOf(yaw, tilt);
			const { toLamp, perMm } = lampView(bounds, turn, lamp);
			const across = new Vector3(...lampFrame(lamp).over).transformDirection(turn.clone().invert());
			const point = pointAt(share);
			const there = point.clone().add(across).applyMatrix4(toLamp);
			expect((there.y - point.applyMatrix4(toLamp).y) / 2).toBeCloseTo(perMm.y, 6);
		}),
	);
});
