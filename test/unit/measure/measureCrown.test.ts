import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import type { CrownMarks, CrownMeasures } from '../../../src/lib/domain/measure/crownMeasures';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { box, ellipticCone, placed, roundedCone, soup, stack } from '../mesh/shapes';

function measured(mesh: TriMesh, marks?: CrownMarks): CrownMeasures {
	const result = measureCrown(mesh, { marks });
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

const codes = (m: CrownMeasures): string[] => m.warnings.map((w) => w.code);
const off = (found: number | null, expected: number): number => Math.abs(found! / expected - 1);

/** Normally distributed noise on every coordinate, the same each time. */
function noisy(mesh: TriMesh, deviation: number): TriMesh {
	let state = 1;
	const random = (): number => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		return (state + 1) / (2 ** 32 + 1);
	};
	const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
	return { ...mesh, positions: mesh.positions.map((x) => x + deviation * normal()) };
}

const openCone = (): TriMesh =>
	stack(
		Array.from({ length: 80 }, (_, i) => {
			const t = i / 80;
			return { centre: [5 * t, 40 * t, 0] as const, a: 10 * (1 - t), b: 7 * (1 - t) };
		}),
		120,
		null,
		[5, 40, 0],
	);

/** A crown on a root: cone above, egg-shaped root below, waist between. */
const rooted = (): TriMesh => {
	const rings = Array.from({ length: 140 }, (_, i) => {
		const y = -30 + (70 * (i + 0.5)) / 140;
		const r = y >= 0 ? 1 - y / 40 : Math.sqrt(1 - (y / 30) ** 2);
		return { centre: [Math.max(0, y) * 0.2, y, 0] as const, a: 10 * r, b: 7 * r };
	});
	return stack(rings, 160, [0, -30, 0], [8, 40, 0]);
};

describe('measureCrown', () => {
	it('keeps lengths within 1 % with 0.02 mm of noise on a 40 mm tooth', () => {
		const mesh = noisy(placed(ellipticCone(10, 6, [4, 40, 0]), [0.7, 1.1, 2.2], 1, [12, -40, 7]), 0.02);
		const m = measured(mesh);
		expect(off(m.axialHeight_mm, 40)).toBeLessThan(0.01);
		expect(off(m.crownHeight_mm, Math.hypot(40, 6))).toBeLessThan(0.01);
		expect(off(m.apicalLength_mm, Math.hypot(40, 14))).toBeLessThan(0.01);
		expect(off(m.crownBaseLength_mm, 20)).toBeLessThan(0.01);
		expect(off(m.crownBaseWidth_mm, 12)).toBeLessThan(0.01);
		expect(off(m.midCrownLength_mm, 10)).toBeLessThan(0.01);
		expect(off(m.volume_mm3, (Math.PI * 60 * 40) / 3)).toBeLessThan(0.01);
		expect(codes(m)).toEqual(['facets-under-noise', 'tip-not-resolved']);
		const round = measured(noisy(roundedCone(10, 0.2, 1.5), 0.02));
		expect(off(round.tipRadius_mm, 1.5)).toBeLessThan(0.1);
	});

	it('gives the same answer for a soup of triangles in any order, in any unit (seed 81)', () => {
		const mesh = ellipticCone(10, 6, [4, 40, 0], 96, 40);
		const plain = measured(mesh);
		fc.assert(
			fc.property(fc.nat(), fc.double({ min: 0.1, max: 4, noNaN: true }), (seed, scale) => {
				const m = measured(soup(placed(mesh, [1, 2, 3], scale, [9, 8, 7]), seed));
				expect(off(m.crownHeight_mm, plain.crownHeight_mm * scale)).toBeLessThan(1e-3);
				expect(off(m.crownBaseWidth_mm, plain.crownBaseWidth_mm * scale)).toBeLessThan(1e-3);
				expect(off(m.surfaceArea_mm2, plain.surfaceArea_mm2 * scale ** 2)).toBeLessThan(1e-3);
				expect(off(m.volume_mm3, plain.volume_mm3! * scale ** 3)).toBeLessThan(1e-3);
				expect(m.vertices).toBe(plain.vertices);
			}),
			{ seed: 81, numRuns: 12 },
		);
	});

	it('puts a flat lid on one open base, and says so', () => {
		const m = measured(placed(openCone(), [0.4, 2, 1], 1, [5, 5, 5]));
		expect(m.watertight).toBe(false);
		expect(off(m.volume_mm3, (Math.PI * 70 * 40) / 3)).toBeLessThan(0.005);
		expect(off(m.crownBaseLength_mm, 20)).toBeLessThan(0.005);
		expect(off(m.axialHeight_mm, 40)).toBeLessThan(0.005);
		expect(codes(m)).toContain('base-capped');
	});

	it('has no volume for two openings or mixed winding', () => {
		const cone = openCone();
		const torn = { ...cone, indices: cone.indices.filter((_, k) => k < 28_080 || k >= 28_140) };
		const m = measured(torn);
		expect(m.volume_mm3).toBeNull();
		expect(codes(m)).toEqual(expect.arrayContaining(['open-mesh', 'section-open']));

		const whole = ellipticCone(10, 6, [4, 40, 0], 96, 40);
		const indices = whole.indices.slice();
		[indices[0], indices[1]] = [indices[1], indices[0]];
		const mixed = measured({ ...whole, indices });
		expect(mixed.volume_mm3).toBeNull();
		expect(codes(mixed)).toContain('mixed-winding');
		expect(off(mixed.crownBaseLength_mm, 20)).toBeLessThan(0.005);
	});

	it('measures a mesh that is inside out like any other', () => {
		const mesh = ellipticCone(10, 6, [4, 40, 0], 96, 40);
		const m = measured({ ...mesh, indices: mesh.indices.slice().reverse() });
		expect(off(m.volume_mm3, (Math.PI * 60 * 40) / 3)).toBeLessThan(0.005);
		expect(off(m.axialHeight_mm, 40)).toBeLessThan(0.001);
	});

	it('measures the marked crown of a rooted tooth, and the whole for volume and surface', () => {
		const mesh = rooted();
		const marks = { apex: [8, 40, 0], baseMesial: [-10, 0, 0], baseDistal: [10, 0, 0] } as const;
		const m = measured(mesh, marks);
		// the plane stands square to the direction of the apex in the labial sense: here it is y = 0
		expect(m.axialHeight_mm).toBeCloseTo(40, 6);
		expect(off(m.crownBaseWidth_mm, 14)).toBeLessThan(0.01);
		expect(off(m.crownHeight_mm, Math.hypot(2, 40))).toBeLessThan(1e-6);
		expect(off(m.apicalLength_mm, Math.hypot(18, 40))).toBeLessThan(1e-6);
		for (const s of m.sections) {
			expect(off(s.area_mm2, Math.PI * 70 * (1 - s.at) ** 2)).toBeLessThan(0.01);
		}
		// cone and half an ellipsoid
		expect(off(m.volume_mm3, Math.PI * 70 * (40 / 3 + 20))).toBeLessThan(0.005);
		expect(codes(m)).not.toContain('crown-base-not-marked');
	});

	it('measures a rooted tooth without marks whole, and warns', () => {
		const m = measured(placed(rooted(), [0.3, 1, 2], 1, [1, 2, 3]));
		expect(codes(m)).toContain('crown-base-not-marked');
		expect(off(m.axialHeight_mm, 70)).toBeLessThan(0.03);
		expect(off(m.crownBaseLength_mm, 20)).toBeLessThan(0.05);
	});

	it('warns of marks that lie off the tooth and refuses marks that make no crown', () => {
		const mesh = rooted();
		const good = { apex: [8, 40, 0], baseMesial: [-10, 0, 0], baseDistal: [10, 0, 0] } as const;
		expect(codes(measured(mesh, { ...good, apex: [8, 60, 0] }))).toContain('mark-off-surface');
		const problem = (marks: CrownMarks): string => {
			const result = measureCrown(mesh, { marks });
			return result.ok ? 'none' : result.problem.code;
		};
		expect(problem({ ...good, baseDistal: good.baseMesial })).toBe('no-base');
		expect(problem({ ...good, apex: [3, 0, 0] })).toBe('no-height');
		expect(problem({ apex: [8, 940, 0], baseMesial: [-10, 900, 0], baseDistal: [10, 900, 0] })).toBe(
			'no-base',
		);
	});

	it('does not take the flat lip side of a tall crown for its base', () => {
		// half a cone: its flat side is larger than its base
		const rings = Array.from({ length: 40 }, (_, i) => {
			const t = i / 40;
			return { centre: [3 * t, 40 * t, 0] as const, a: 10 * (1 - t), b: 8 * (1 - t) };
		});
		const mesh = stack(rings, 96, [0, 0, 0], [3, 40, 0]);
		const positions = mesh.positions.map((x, i) => (i % 3 === 2 ? Math.min(0, x) : x));
		const m = measured(placed({ ...mesh, positions }, [1, 1, 1], 1, [0, 0, 0]));
		expect(off(m.axialHeight_mm, 40)).toBeLessThan(0.005);
		expect(off(m.crownBaseLength_mm, 20)).toBeLessThan(0.005);
		expect(off(m.crownBaseWidth_mm, 8)).toBeLessThan(0.005);
	});

	it('warns of a size that no tooth has: a file read in the wrong unit', () => {
		const mesh = ellipticCone(10, 6, [4, 40, 0], 48, 24);
		expect(codes(measured(placed(mesh, [0, 0, 0], 1000, [0, 0, 0])))).toContain('unlikely-size');
		expect(codes(measured(placed(mesh, [0, 0, 0], 1e-6, [0, 0, 0])))).toContain('unlikely-size');
		expect(codes(measured(mesh))).not.toContain('unlikely-size');
	});

	it('counts pieces', () => {
		const [a, b] = [ellipticCone(10, 6, [4, 40, 0], 48, 24), box(1, 1, 1)];
		const both = {
			positions: Float32Array.of(...a.positions, ...b.positions.map((x, i) => x + (i % 3 === 1 ? 5 : 0))),
			indices: Uint32Array.of(...a.indices, ...b.indices.map((i) => i + a.positions.length / 3)),
		};
		const m = measured(both);
		expect(m.components).toBe(2);
		expect(codes(m)).toContain('several-pieces');
	});

	it.each([
		['nothing', [], [], 'empty'],
		['NaN', [0, 0, 0, 1, NaN, 0, 0, 1, 0], [0, 1, 2], 'not-a-number'],
		['an index out of range', [0, 0, 0, 1, 0, 0, 0, 1, 0], [0, 1, 7], 'bad-index'],
		['points on a line', [0, 0, 0, 1, 1, 1, 2, 2, 2], [0, 1, 2], 'no-area'],
		['triangles that fall together', [1, 1, 1, 1, 1, 1, 1, 1, 1], [0, 1, 2], 'no-area'],
		['one flat triangle', [0, 0, 0, 1, 0, 0, 0, 1, 0], [0, 1, 2], 'no-height'],
	])('explains %s', (_, positions, indices, code) => {
		const result = measureCrown({
			positions: Float32Array.from(positions),
			indices: Uint32Array.from(indices),
		});
		expect(result.ok).toBe(false);
		if (!result.ok) expect(result.problem.code).toBe(code);
	});

	it('never throws, whatever the triangles (seed 82)', () => {
		const coordinate = fc.oneof(
			fc.float({ noNaN: true, noDefaultInfinity: true }),
			fc.constantFrom(0, 1, -1, 1e30, 1e-30),
		);
		fc.assert(
			fc.property(
				fc.array(coordinate, { minLength: 9, maxLength: 60 }),
				fc.array(fc.nat({ max: 19 }), { minLength: 3, maxLength: 60 }),
				(positions, indices) => {
					const result = measureCrown({
						positions: Float32Array.from(positions),
						indices: Uint32Array.from(indices),
					});
					if (!result.ok) expect(result.problem.message.length).toBeGreaterThan(10);
					else expect(Number.isFinite(result.value.axialHeight_mm)).toBe(true);
				},
			),
			{ seed: 82, numRuns: 500 },
		);
	});
});
