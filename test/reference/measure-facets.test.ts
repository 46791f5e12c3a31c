import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import type { CrownMeasures } from '../../src/lib/domain/measure/crownMeasures';
import { clipHalfSpace } from '../../src/lib/domain/mesh/clipHalfSpace';
import type { TriMesh } from '../../src/lib/domain/mesh/triMesh';
import { sculpt } from '../../src/lib/domain/tooth/sculpt';
import { plainForm } from '../unit/tooth/helpers';
import { crownOf, ellipse, noisy } from '../unit/measure/lineShapes';
import { placed } from '../unit/mesh/shapes';

function measured(mesh: TriMesh): CrownMeasures {
	const result = measureCrown(mesh);
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

const [RADIUS, HEIGHT] = [10, 40];
const cone = () => crownOf(ellipse(1), { radius: RADIUS, height: HEIGHT, lean: 0 });

/** A cone worn down to the plane y = at + slope * x. */
function worn(at: number, slope: number): TriMesh {
	const n = Math.hypot(slope, 1);
	const cut = clipHalfSpace({ ...cone() }, { normal: [-slope / n, 1 / n, 0], offset_mm: at / n }, 'facet');
	if (!cut) throw new Error('nothing left');
	// a scan knows no regions
	return { positions: cut.positions, indices: cut.indices };
}

/**
 * Area of the ellipse in which that plane cuts the cone x^2 + z^2 = (k (h - y))^2 (analytic geometry): half axes seen from above
 * k H / (1 - k^2 m^2) and k H / sqrt(1 - k^2 m^2), with H = h - at; the plane itself is sqrt(1 + m^2) times as large.
 */
function ellipseArea(at: number, m: number): number {
	const k = RADIUS / HEIGHT;
	const left = 1 - (k * m) ** 2;
	return (Math.PI * (k * (HEIGHT - at)) ** 2 * Math.sqrt(1 + m * m)) / left ** 1.5;
}

const angle = fc.double({ min: -3.1, max: 3.1, noNaN: true });

describe('worn facets', () => {
	it('of known area on a cone: within 1 %, at any rotation (seed 91)', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 26, max: 33, noNaN: true }),
				fc.constantFrom(0, 0.6, 1.7, 2.2),
				fc.tuple(angle, angle, angle),
				(at, slope, turn) => {
					const m = measured(placed(worn(at, slope), turn, 1, [4, 5, 6]));
					expect(m.facets).toHaveLength(1);
					const [facet] = m.facets;
					expect(Math.abs(facet.area_mm2 / ellipseArea(at, slope) - 1)).toBeLessThan(0.01);
					// the high side is distal, the side to which the apex leans; steep facets look mesially
					expect(facet.where).toBe(slope > 1 ? 'mesial' : 'apical');
					expect(Math.hypot(...facet.normal)).toBeCloseTo(1, 6);
				},
			),
			{ seed: 91, numRuns: 16 },
		);
	}, 120_000);

	it('looks outward, in the file’s own frame, whatever way the triangles are wound', () => {
		const mesh = worn(25, 0.6);
		const reversed = { ...mesh, indices: Uint32Array.from(mesh.indices).reverse() };
		for (const m of [measured(mesh), measured(reversed)]) {
			expect(m.facets[0].normal[0]).toBeCloseTo(-0.6 / Math.hypot(0.6, 1), 3);
			expect(m.facets[0].normal[1]).toBeCloseTo(1 / Math.hypot(0.6, 1), 3);
		}
	});

	it('is found with noise, or none is told with a warning', () => {
		for (const deviation of [0.0005, 0.02]) {
			const m = measured(noisy(worn(25, 0.6), deviation));
			if (m.facets.length === 0) expect(m.warnings.map((w) => w.code)).toContain('facets-under-noise');
			else expect(Math.abs(m.facets[0].area_mm2 / ellipseArea(25, 0.6) - 1)).toBeLessThan(0.02);
		}
	});

	it('is not a flat face of the crown’s own form, nor its base', () => {
		for (const shape of ['triangular', 'flat-sided', 'blade', 'oval'] as const) {
			for (const taper of ['cone', 'bullet'] as const) {
				for (const distal_deg of [0, 20]) {
					const made = sculpt(
						plainForm({
							baseWidth_mm: 12,
							sections: [{ at: 0, shape }],
							taper,
							curve: { distal_deg, lingual_deg: 0, startsAt: 0.2 },
						}),
					);
					if (!made.ok) throw new Error(made.problem.code);
					expect(measured(made.value.mesh).facets).toEqual([]);
				}
			}
		}
	}, 60_000);

	it('has a sharp border that is no edge of the crown', () => {
		const made = sculpt(
			plainForm({
				taper: 'bullet',
				wear: { facets: [{ side: 'labial', angle_deg: 16, depth_mm: 1.2, at: 0.7 }] },
			}),
		);
		if (!made.ok) throw new Error(made.problem.code);
		const result = measureCrown(made.value.mesh, { marks: made.value.marks });
		if (!result.ok) throw new Error(result.problem.message);
		const m = result.value;
		expect(m.facets.map((facet) => facet.where)).toEqual(['labial']);
		expect(m.carinaCount).toBe(0);
	});
});
