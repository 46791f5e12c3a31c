import fc from 'fast-check';
import { Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import type { Lamp } from '../../../src/lib/stage/api';
import { CENTRE_POINTS, centreLine } from '../../../src/lib/stage/centreLine';
import { DEFAULT_LAMP, lampFrame } from '../../../src/lib/stage/lamp';
import { place } from '../../../src/lib/stage/placement';
import { EYE_radii } from '../../../src/lib/stage/viewport';

/** A cone of `n` points a ring: radius 6 at y = 0, tip at y = 30. */
const cone = (n = 64, rings = 60): Float32Array => {
	const out: number[] = [];
	for (let j = 0; j <= rings; j++) {
		const r = 6 * (1 - j / rings);
		for (let i = 0; i < n; i++) {
			out.push(r * Math.cos((2 * Math.PI * i) / n), (30 * j) / rings, r * Math.sin((2 * Math.PI * i) / n));
		}
	}
	return Float32Array.from(out);
};
const bounds = { min: [-6, 0, -6] as const, max: [6, 30, 6] as const };
const at = (yaw_deg: number, tilt_deg: number, pxPerMm = 1, lamp: Lamp = DEFAULT_LAMP) =>
	place(bounds, centreLine(cone()), { yaw_deg, tilt_deg, zoom: 1 }, pxPerMm, lampFrame(lamp).dir);
const seen = (p: [number, number, number], yaw: number, tilt: number) => {
	const v = new Vector3(...p).applyMatrix4(at(yaw, tilt).turn);
	return [v.x, v.y, v.z];
};

describe('the middle line of a cone', () => {
	const { points } = centreLine(cone());
	test('runs up the axis and tapers: in each layer the radius of its widest ring', () => {
		for (let i = 0; i < CENTRE_POINTS; i++) {
			expect(points[i * 4]).toBeCloseTo(0, 5);
			expect(points[i * 4 + 2]).toBeCloseTo(0, 5);
			expect(points[i * 4 + 3]).toBeCloseTo(6 * (1 - i / CENTRE_POINTS), 1);
		}
	});
	test('of nothing is a point of no size', () => {
		expect([...centreLine(new Float32Array()).points]).toEqual(new Array(CENTRE_POINTS * 4).fill(0));
	});
});

describe('turning', () => {
	const close = (a: number[], b: number[]) => a.forEach((x, i) => expect(x).toBeCloseTo(b[i], 8));
	test('upright the tip is up and the labial side faces the viewer', () => {
		close(seen([0, 30, 0], 0, 0), [0, 15, 0]);
		close(seen([0, 15, 6], 0, 0), [0, 0, 6]);
	});
	test('positive yaw moves the near side to the right, as a drag to the right should', () => {
		close(seen([0, 15, 6], 90, 0), [6, 0, 0]);
	});
	test('positive tilt brings the tip towards the viewer, as a drag downwards should', () => {
		close(seen([0, 30, 0], 0, 90), [0, 0, 15]);
		close(seen([0, 30, 0], 45, 90), [0, 0, 15]);
	});
});

describe('what a tooth needs', () => {
	test('holds every point of it, seen in perspective, at any turn; and its shadow', () => {
		const points = cone(24, 12);
		const eye = EYE_radii * (Math.hypot(12, 30, 12) / 2);
		fc.assert(
			fc.property(fc.integer({ min: -180, max: 180 }), fc.integer({ min: -100, max: 100 }), (yaw, tilt) => {
				const { turn, tooth, need } = at(yaw, tilt, 7);
				for (let i = 0; i < points.length; i += 3) {
					const v = new Vector3().fromArray(points, i).applyMatrix4(turn);
					const near = (7 * eye) / (eye - v.z);
					expect(v.x * near).toBeGreaterThanOrEqual(tooth.left);
					expect(v.x * near).toBeLessThanOrEqual(tooth.right);
					expect(-v.y * near).toBeGreaterThanOrEqual(tooth.top);
					expect(-v.y * near).toBeLessThanOrEqual(tooth.bottom);
				}
				expect(need.left).toBeLessThanOrEqual(tooth.left);
				expect(need.right).toBeGreaterThanOrEqual(tooth.right);
				expect(need.top).toBeLessThanOrEqual(tooth.top);
				expect(need.bottom).toBeGreaterThanOrEqual(tooth.bottom);
			}),
			{ seed: 14, numRuns: 60 },
		);
	});
	test('the shadow falls away from the lamp, which stands at the upper left', () => {
		const { chain } = at(0, 0);
		for (const disc of chain) expect(disc.x).toBeGreaterThan(0);
		expect(chain[CENTRE_POINTS - 1].y).toBeLessThan(15);
	});
});

describe('the shadow on the felt', () => {
	const middle = (lamp: Lamp) => {
		const { left, right, top, bottom } = at(0, 0, 1, lamp).shadow;
		return { x: (left + right) / 2, y: (top + bottom) / 2 };
	};
	const frontal = middle({ azimuth_deg: 0, elevation_deg: 80 });

	test('falls away from the lamp, whatever its azimuth', () => {
		for (let azimuth_deg = 0; azimuth_deg < 360; azimuth_deg += 30) {
			const { dir } = lampFrame({ azimuth_deg, elevation_deg: 30 });
			const { x, y } = middle({ azimuth_deg, elevation_deg: 30 });
			const away = Math.hypot(x, y - frontal.y);
			expect(away).toBeGreaterThan(1);
			// the cone is thicker at its base, so the shadow's box is not quite where the lamp alone would put it
			const flat = Math.hypot(dir[0], dir[1]);
			const along = -(x * dir[0] + (y - frontal.y) * dir[1]) / flat;
			expect(along / away).toBeGreaterThan(0.8);
		}
	});

	test('falls farther from a lower lamp, but never away from the tooth', () => {
		const reach = [80, 60, 30, 15, 8, 3].map(
			(elevation_deg) => middle({ azimuth_deg: 270, elevation_deg }).x,
		);
		for (let i = 1; i < reach.length; i++) expect(reach[i]).toBeGreaterThan(reach[i - 1]);
		// the cone is 12 mm wide at its base
		expect(reach.at(-1)).toBeLessThan(12);
	});
});
