import Module from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { manifoldSolids } from '../../src/lib/domain/mesh/manifoldSolids';
import type { Solids } from '../../src/lib/domain/mesh/solids';
import { regionIndex, type TriMesh } from '../../src/lib/domain/mesh/triMesh';
import { volume } from '../../src/lib/domain/mesh/volume';
import { biteNormal, closingDirection } from '../../src/lib/domain/replacement/bite';
import { measureFacets } from '../../src/lib/domain/replacement/measureFacets';
import { wearBySweep } from '../../src/lib/domain/replacement/wearBySweep';
import { bitePlane, wearTooth } from '../../src/lib/domain/replacement/wearTooth';
import { isClosed } from '../../src/lib/domain/tooth/isClosed';
import { crownOf, ellipse } from '../unit/measure/lineShapes';

const [RADIUS, HEIGHT] = [10, 40];
const cone = (): TriMesh => crownOf(ellipse(1), { radius: RADIUS, height: HEIGHT, lean: 0 });

/**
 * Area of the ellipse in which the plane n . p = offset, n = (0, sin c, cos c), cuts the cone x^2 + z^2 = (k (h - y))^2
 * (analytic geometry): in y = at + m z with m = -cot c, its half axes seen from above are k H / (1 - k^2 m^2) and
 * k H / sqrt(1 - k^2 m^2), H = h - at; the plane itself is sqrt(1 + m^2) times as large.
 */
function ellipseArea(closing_deg: number, offset_mm: number): number {
	const angle = (closing_deg * Math.PI) / 180;
	const at = offset_mm / Math.sin(angle);
	const m = 1 / Math.tan(angle);
	const k = RADIUS / HEIGHT;
	return (Math.PI * (k * (HEIGHT - at)) ** 2 * Math.sqrt(1 + m * m)) / (1 - (k * m) ** 2) ** 1.5;
}

describe('a facet worn by a sliding tooth', () => {
	// steeper than the cone's own side (14 degrees), so that the cut is an ellipse
	it.each([
		{ closing_deg: 30, spacing_mm: 12 },
		{ closing_deg: 40, spacing_mm: 18 },
		{ closing_deg: 50, spacing_mm: 24 },
	])(
		'closing $closing_deg degrees at $spacing_mm mm: area of the ellipse within 1 %, angle within 0.5 degree',
		(setup) => {
			const plane = bitePlane(HEIGHT, cone(), setup);
			const worn = wearTooth(cone(), cone(), setup, 0.25, { stumpShare: 0.5 });
			expect(worn.touches).toBe(true);
			expect(worn.plane!.normal).toEqual(plane.normal);
			expect(worn.facets).toHaveLength(1);
			const [facet] = worn.facets;
			expect(facet.area_mm2 / ellipseArea(setup.closing_deg, worn.plane!.offset_mm)).toBeGreaterThan(0.99);
			expect(facet.area_mm2 / ellipseArea(setup.closing_deg, worn.plane!.offset_mm)).toBeLessThan(1.01);
			expect(Math.abs(facet.angle_deg - setup.closing_deg)).toBeLessThan(0.5);
		},
	);

	it('lies along the path of the other tooth', () => {
		for (const angle of [5, 20, 60]) {
			const [n, d] = [biteNormal(angle), closingDirection(angle)];
			expect(n[0] * d[0] + n[1] * d[1] + n[2] * d[2]).toBeCloseTo(0, 12);
		}
	});
});

describe('the same by the swept solid, cut with manifold-3d (a general library for solids)', () => {
	let solids: Solids;
	beforeAll(async () => {
		const module = await Module();
		module.setup();
		solids = manifoldSolids(module);
	});

	it('takes no more than the plane does, and is closed with a facet of its own region', () => {
		const setup = { closing_deg: 25, spacing_mm: 12 };
		const standing = { ...cone(), regions: new Uint8Array(cone().indices.length / 3) };
		const swept = wearBySweep(standing, cone(), setup, solids)!;
		expect(isClosed(swept)).toBe(true);
		const flat = wearTooth(standing, cone(), setup, 0.6 - 1e-9, { stumpShare: 1 }).mesh;
		expect(volume(swept)).toBeLessThan(volume(standing));
		expect(volume(swept)).toBeGreaterThan(volume(flat));
		const facet = swept.regions!.filter((region) => region === regionIndex('facet')).length;
		expect(facet).toBeGreaterThan(20);
		expect(facet).toBeLessThan(swept.regions!.length);
		// a hollow facet is no flat one
		expect(measureFacets(flat)).toHaveLength(1);
	});

	it('agrees on what is left of a cube without a half-cube', () => {
		const box = (x1: number): TriMesh =>
			solids.hull(
				Float32Array.from(
					[0, 1].flatMap((x) => [0, 2].flatMap((y) => [0, 2].flatMap((z) => [x * x1, y, z]))),
				),
			);
		expect(volume(solids.subtract(box(2), box(1))!)).toBeCloseTo(4, 6);
		expect(solids.subtract(box(1), box(2))).toBeNull();
	});
});
