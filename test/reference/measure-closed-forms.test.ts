import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import type { CrownMeasures } from '../../src/lib/domain/measure/crownMeasures';
import type { TriMesh } from '../../src/lib/domain/mesh/triMesh';
import { box, ellipticCone, placed, roundedCone, soup, sphere, torus } from '../unit/mesh/shapes';

/** Shapes whose measures are known from geometry, at any rotation, place, scale and triangle order. */

function measured(mesh: TriMesh): CrownMeasures {
	const result = measureCrown(mesh);
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

const near = (found: number | null, expected: number, share: number, what: string): void => {
	if (found === null || Math.abs(found / expected - 1) > share)
		throw new Error(`${what}: ${found} for ${expected}`);
};

const angle = fc.double({ min: -3.1, max: 3.1, noNaN: true });
const angles = fc.tuple(angle, angle, angle);
const shift = fc.double({ min: -200, max: 200, noNaN: true });
const move = fc.tuple(shift, shift, shift);

describe('oblique elliptic cone', () => {
	it('of 43,000 triangles: lengths, areas, volume within 0.5 %, angles within 1 degree (seed 51)', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.35, max: 0.95, noNaN: true }),
				fc.double({ min: 1, max: 4, noNaN: true }),
				fc.double({ min: 0.05, max: 0.8, noNaN: true }),
				fc.double({ min: 0.3, max: 4, noNaN: true }),
				angles,
				move,
				fc.nat(),
				(ratio, slender, lean, scale, turn, to, order) => {
					const [a, b, h] = [10 * scale, 10 * ratio * scale, 20 * slender * scale];
					const apex = [lean * a, h, 0] as const;
					const m = measured(soup(placed(ellipticCone(a, b, apex), turn, 1, to), order));
					near(m.axialHeight_mm, h, 0.005, 'axial height');
					near(m.crownBaseLength_mm, 2 * a, 0.005, 'CBL');
					near(m.crownBaseWidth_mm, 2 * b, 0.005, 'CBW');
					near(m.crownHeight_mm, Math.hypot(h, a - apex[0]), 0.005, 'CH');
					near(m.apicalLength_mm, Math.hypot(h, a + apex[0]), 0.005, 'AL');
					near(m.volume_mm3, (Math.PI * a * b * h) / 3, 0.005, 'volume');
					near(m.midCrownLength_mm, a, 0.005, 'MCL');
					near(m.midCrownWidth_mm, b, 0.005, 'MCW');
					const crownAngle = (Math.atan2(h, a + apex[0]) * 180) / Math.PI;
					expect(Math.abs(m.crownAngle_deg - crownAngle)).toBeLessThan(1);
					expect(m.sections).toHaveLength(9);
					for (const s of m.sections)
						near(s.area_mm2, Math.PI * a * b * (1 - s.at) ** 2, 0.005, `area at ${s.at}`);
					// its centreline is straight, however oblique
					expect(m.curvature_deg).toBeLessThan(1);
					// and its tip sharper than any mesh
					expect(m.tipRadius_mm).toBeNull();
					expect(m.warnings.map((w) => w.code)).toContain('tip-not-resolved');
					expect(m.watertight).toBe(true);
				},
			),
			{ seed: 51, numRuns: 15 },
		);
	}, 120_000);

	it('closes in on the surface of a round cone, pi r (r + slant), as the mesh grows finer', () => {
		const exact = Math.PI * 10 * (10 + Math.hypot(10, 40));
		const errors = [20, 40, 80].map(
			(n) => exact - measured(ellipticCone(10, 10, [0, 40, 0], n, n)).surfaceArea_mm2,
		);
		expect(errors[0] / errors[1]).toBeGreaterThan(3.7);
		expect(errors[1] / errors[2]).toBeGreaterThan(3.7);
	});
});

describe('round cone with a spherical tip', () => {
	it('gives back the tip radius within 10 % and the height within 0.5 % (seed 52)', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.1, max: 0.7, noNaN: true }),
				fc.double({ min: 0.05, max: 0.6, noNaN: true }),
				angles,
				move,
				(alpha, share, turn, to) => {
					const r = 10;
					const tip = r * share;
					const touch = tip * (1 - Math.sin(alpha));
					const height = touch + (r - tip * Math.cos(alpha)) / Math.tan(alpha);
					const m = measured(placed(roundedCone(r, alpha, tip), turn, 1, to));
					near(m.tipRadius_mm, tip, 0.1, 'tip radius');
					near(m.axialHeight_mm, height, 0.005, 'axial height');
					near(m.crownBaseLength_mm, 2 * r, 0.005, 'CBL');
				},
			),
			{ seed: 52, numRuns: 15 },
		);
	}, 120_000);
});

describe('bodies that are no crowns', () => {
	it('sphere: 4 pi r^2, 4/3 pi r^3, the tip radius is its own, and a warning that no base was found', () => {
		const m = measured(placed(sphere(10, 256, 128), [1, 2, 3], 1, [50, 60, 70]));
		near(m.surfaceArea_mm2, 400 * Math.PI, 0.005, 'area');
		near(m.volume_mm3, (4000 / 3) * Math.PI, 0.005, 'volume');
		near(m.tipRadius_mm, 10, 0.01, 'tip radius');
		near(m.axialHeight_mm, 20, 0.005, 'height');
		for (const s of m.sections) near(s.circularity, 1, 0.005, `circularity at ${s.at}`);
		for (const s of m.sections) near(s.area_mm2, Math.PI * 400 * s.at * (1 - s.at), 0.005, `area at ${s.at}`);
		expect(m.warnings.map((w) => w.code)).toContain('crown-base-not-marked');
	});

	it('torus: 4 pi^2 R r and 2 pi^2 R r^2', () => {
		const m = measured(placed(torus(9, 2, 256, 128), [1, 2, 3], 1, [50, 60, 70]));
		near(m.surfaceArea_mm2, 4 * Math.PI ** 2 * 18, 0.005, 'area');
		near(m.volume_mm3, 2 * Math.PI ** 2 * 36, 0.005, 'volume');
	});

	it('cube of 10 mm: 600 mm2, 1000 mm3, and warnings that it is coarse and flat-topped', () => {
		const m = measured(placed(box(10, 10, 10), [0.4, 0.9, -2], 1, [5, 6, 7]));
		near(m.surfaceArea_mm2, 600, 1e-4, 'area');
		near(m.volume_mm3, 1000, 1e-4, 'volume');
		near(m.axialHeight_mm, 10, 1e-4, 'height');
		expect(m.tipRadius_mm).toBeNull();
		const codes = m.warnings.map((w) => w.code);
		expect(codes).toEqual(expect.arrayContaining(['coarse-mesh', 'tip-flat', 'mesial-distal-unclear']));
	});
});
