import { describe, expect, it } from 'vitest';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import type { CrownMeasures } from '../../src/lib/domain/measure/crownMeasures';
import type { TriMesh } from '../../src/lib/domain/mesh/triMesh';
import {
	crownOf,
	ellipse,
	fluted,
	lens,
	noisy,
	polygon,
	squaredEllipse,
	type Outline,
} from '../unit/measure/lineShapes';
import { placed, soup } from '../unit/mesh/shapes';

/** Counts of ridges and edges on crowns whose sections are known curves: 43,000 triangles, any rotation, unit and order. */

function measured(mesh: TriMesh): CrownMeasures {
	const result = measureCrown(mesh);
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

/** Ridges, edges, outline kinds at all heights. */
const cases: [string, Outline, number, number, string][] = [
	['cone', ellipse(1), 0, 0, 'round'],
	['elliptic cone, half as wide', ellipse(0.5), 0, 0, 'oval'],
	['elliptic cone, a fifth as wide', ellipse(0.2), 0, 0, 'oval'],
	['superellipse', squaredEllipse(0.7), 0, 0, 'oval'],
	['lens, half as wide', lens(0.5), 0, 2, 'blade'],
	['lens, a fifth as wide', lens(0.2), 0, 2, 'blade'],
	['triangle', polygon(3), 0, 3, 'triangular'],
	['flat triangle', polygon(3, 0.5), 0, 3, 'triangular'],
	['square', polygon(4), 0, 4, 'other'],
	['12 ridges of 3 %', fluted(ellipse(0.8), 12, 0.03), 12, 0, 'oval'],
	['12 ridges of 5 % on a superellipse', fluted(squaredEllipse(0.6), 12, 0.05), 12, 0, 'oval'],
	['18 ridges of 3 %', fluted(ellipse(0.8), 18, 0.03), 18, 0, 'oval'],
	['18 ridges of 10 %', fluted(ellipse(1), 18, 0.1), 18, 0, 'round'],
	['24 ridges of 5 %', fluted(ellipse(0.8), 24, 0.05), 24, 0, 'oval'],
	['18 ridges up to 0.7', fluted(ellipse(1), 18, 0.05, -1, 0.7), 18, 0, 'round'],
	['18 ridges up to 0.3 only', fluted(ellipse(1), 18, 0.05, -1, 0.3), 0, 0, 'round'],
];

const unit = (u: number) => [0.3 + u, 1.1 * u, 2.3 * u] as const;

describe('ridges and edges of closed forms', () => {
	it.each(cases)(
		'%s: turned, scaled, as a soup',
		(_, outline, ridges, edges, shape) => {
			[0.1, 1, 3].forEach((scale, i) => {
				const m = measured(soup(placed(crownOf(outline), unit(i), scale, [9, 8, 7]), i + 1));
				expect([m.ridgeCount, m.carinaCount]).toEqual([ridges, edges]);
				expect(new Set(m.sections.map((s) => s.shape))).toEqual(new Set([shape]));
				expect(m.facets).toEqual([]);
				expect(m.carinae).toHaveLength(edges);
			});
		},
		60_000,
	);

	it.each(cases)(
		'%s: with 0.02 mm of noise on 40 mm (seeds 1, 2)',
		(_, outline, ridges, edges) => {
			for (const seed of [1, 2]) {
				const m = measured(placed(noisy(crownOf(outline), 0.02, seed), unit(seed), 1, [5, 6, 7]));
				// null with a warning is honest, another number is not
				if (m.carinaCount === null) expect(m.warnings.map((w) => w.code)).toContain('edges-unclear');
				else expect(m.carinaCount).toBe(edges);
				if (m.ridgeCount === null) expect(m.warnings.some((w) => w.code.startsWith('ridges-'))).toBe(true);
				else expect(m.ridgeCount).toBe(ridges);
				// those that the crown's makers ask for are told
				if (ridges >= 12) expect(m.ridgeCount).toBe(ridges);
			}
		},
		60_000,
	);

	it('says where ridges run and how far they stand out', () => {
		const m = measured(crownOf(fluted(ellipse(1), 18, 0.08, 0.2, 0.7)));
		expect(m.ridges).toHaveLength(18);
		for (const ridge of m.ridges) {
			expect(ridge.from).toBeGreaterThan(0.12);
			expect(ridge.from).toBeLessThan(0.24);
			expect(ridge.to).toBeGreaterThan(0.66);
			expect(ridge.to).toBeLessThan(0.78);
			// 8 % of the radius, which is 5.5 mm half way along them
			expect(Math.abs(ridge.prominence_mm / 0.44 - 1)).toBeLessThan(0.15);
		}
		// a wave of cos(18 a) has a crest every 20 degrees
		m.ridges.forEach((ridge, i) => {
			expect(Math.abs(ridge.angle_deg - ((i * 20) % 360)) % 360).toBeLessThan(3);
		});
	});

	it('finds the ends of a lens mesially and distally', () => {
		const m = measured(crownOf(lens(0.5)));
		const off = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);
		for (const side of [0, 180]) {
			expect(Math.min(...m.carinae.map((edge) => off(edge.angle_deg, side)))).toBeLessThan(3);
		}
		for (const edge of m.carinae) expect(edge.to - edge.from).toBeGreaterThan(0.85);
	});

	it('does not count what it cannot tell: waves without hollows, and a mesh too coarse', () => {
		const low = measured(crownOf(fluted(ellipse(0.8), 10, 0.03)));
		expect(low.ridgeCount).toBeNull();
		expect(low.warnings.map((w) => w.code)).toContain('ridges-low');
		const coarse = measured(crownOf(fluted(ellipse(0.8), 12, 0.05), { around: 36, up: 30 }));
		expect([coarse.ridgeCount, coarse.carinaCount]).toEqual([null, null]);
		expect(coarse.warnings.map((w) => w.code)).toContain('ridges-not-resolved');
	});
});
