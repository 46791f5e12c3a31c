import { describe, expect, it } from 'vitest';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import type { CrownMeasures } from '../../src/lib/domain/measure/crownMeasures';
import { planeFrame } from '../../src/lib/domain/mesh/planeFrame';
import { section } from '../../src/lib/domain/mesh/section';
import type { ToothForm } from '../../src/lib/domain/tooth/form';
import { plainForm, sculpted } from '../unit/tooth/helpers';

/** Forms go in, and their own ridges, edges and wear come out of the surface alone. */

function measured(changes: Partial<ToothForm>): CrownMeasures {
	const { mesh, marks } = sculpted(plainForm({ baseWidth_mm: 16, taper: 'bullet', ...changes }));
	const result = measureCrown({ positions: mesh.positions, indices: mesh.indices }, { marks });
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

const ridges = (changes: Partial<NonNullable<ToothForm['ridges']>>): ToothForm['ridges'] => ({
	count: 12,
	height_mm: 0.5,
	sides: 'all',
	from: 0,
	to: 0.9,
	alternating: false,
	...changes,
});
const keels: ToothForm['carinae'] = [
	{ where: 'mesial', prominence_mm: 0.7, from: 0 },
	{ where: 'distal', prominence_mm: 0.7, from: 0 },
];
const serrated = keels.map((keel) => ({ ...keel, serrationsPer5mm: 6 }));
const bent = { distal_deg: 30, lingual_deg: 15, startsAt: 0.1 };

const cases: [string, Partial<ToothForm>, number, number][] = [
	['plain', {}, 0, 0],
	['bent', { curve: bent }, 0, 0],
	['oval', { sections: [{ at: 0, shape: 'oval' }] }, 0, 0],
	['flat-sided', { sections: [{ at: 0, shape: 'flat-sided' }] }, 0, 0],
	['blade', { sections: [{ at: 0, shape: 'blade' }] }, 0, 2],
	['triangular', { sections: [{ at: 0, shape: 'triangular' }] }, 0, 3],
	['two keels', { carinae: keels }, 0, 2],
	['two serrated keels, bent', { carinae: serrated, curve: bent }, 0, 2],
	['keels on a blade', { carinae: keels, sections: [{ at: 0, shape: 'blade' }] }, 0, 2],
	['12 ridges', { ridges: ridges({}) }, 12, 0],
	['24 ridges, bent', { ridges: ridges({ count: 24, height_mm: 0.35 }), curve: bent }, 24, 0],
	['10 lingual ridges', { ridges: ridges({ count: 10, sides: 'lingual' }) }, 10, 0],
	['every second of 20 ridges', { ridges: ridges({ count: 20, height_mm: 0.4, alternating: true }) }, 10, 0],
	['ridges that end low', { ridges: ridges({ to: 0.35 }) }, 0, 0],
	['10 ridges and two keels', { ridges: ridges({ count: 10, sides: 'lingual' }), carinae: keels }, 10, 2],
	['with a root', { ridges: ridges({}), root: { state: 'open', length_mm: 12 } }, 12, 0],
];

describe('ridges and edges of sculpted crowns', () => {
	it.each(cases)('%s', (_, form, ridgeCount, carinaCount) => {
		const m = measured(form);
		expect([m.ridgeCount, m.carinaCount]).toEqual([ridgeCount, carinaCount]);
		expect(m.facets).toEqual([]);
	});

	// a keel that runs up between two ridges covers the one on its flank: what is seen is not what was made
	const one: ToothForm['carinae'] = [{ where: 'distal', prominence_mm: 1, from: 0.1 }];
	it.each<[string, Partial<ToothForm>]>([
		['27 ridges, two of them on the flanks of one keel', { ridges: ridges({ count: 27 }), carinae: one }],
		[
			'14 long and 14 short ridges, two long ones on the flanks of keels',
			{
				crownHeight_mm: 8.5,
				baseLength_mm: 12,
				baseWidth_mm: 9.5,
				sections: [{ at: 0, shape: 'oval' }],
				taper: 'dome',
				tipRadius_mm: 1.5,
				ridges: ridges({ count: 28, height_mm: 0.14, from: 0.05, to: 0.85, alternating: true }),
				carinae: keels.map((keel) => ({ ...keel, prominence_mm: 0.4, from: 0.2 })),
			},
		],
	])('are not counted where an edge may hide a ridge: %s', (_, form) => {
		const m = measured(form);
		expect(m.ridgeCount).toBeNull();
		expect(m.warnings.map(({ code }) => code)).toContain('ridges-beside-edge');
		expect(m.carinaCount).toBe(form.carinae!.length);
	});

	it('stand where the form says, labial at 90 degrees', () => {
		const m = measured({
			carinae: [
				{ where: 'labial', prominence_mm: 0.7, from: 0 },
				{ where: 'distal', prominence_mm: 0.7, from: 0 },
			],
		});
		const off = (side: number) =>
			Math.min(...m.carinae.map(({ angle_deg }) => Math.abs(((angle_deg - side + 540) % 360) - 180)));
		expect(off(90)).toBeLessThan(5);
		expect(off(0)).toBeLessThan(5);
		expect(off(180)).toBeGreaterThan(60);
		expect(off(270)).toBeGreaterThan(60);
		for (const edge of m.carinae) expect(Math.abs(edge.prominence_mm / 0.7 - 1)).toBeLessThan(0.35);
	});

	it.each([
		['round', 'round'],
		['oval', 'oval'],
		['blade', 'blade'],
		['triangular', 'triangular'],
		['flat-sided', 'other'],
	] as const)('a %s section is %s', (shape, expected) => {
		const baseWidth_mm = shape === 'round' ? 20 : 14;
		for (const carinae of [[], keels]) {
			const m = measured({ baseWidth_mm, sections: [{ at: 0, shape }], taper: 'cone', carinae });
			const middle = m.sections.filter((s) => s.at > 0.15 && s.at < 0.75).map((s) => s.shape);
			expect(new Set(middle)).toEqual(new Set([expected]));
		}
	});
});

describe('bases and marks', () => {
	it('a mark on a tip worn flat lies on the surface', () => {
		const m = measured({ wear: { tipWornTo_mm: 20 } });
		expect(m.warnings.map((w) => w.code)).not.toContain('mark-off-surface');
		expect(m.facets.map((facet) => facet.where)).toEqual(['apical']);
	});

	it('a tip that is a little worn has a small facet, as large as the section there', () => {
		const form = { crownHeight_mm: 38, baseLength_mm: 25, baseWidth_mm: 21, tipRadius_mm: 1.2 };
		const whole = measured(form);
		expect(whole.facets).toEqual([]);
		const worn = measured({ ...form, wear: { tipWornTo_mm: 36.8 } });
		expect(worn.facets.map((facet) => facet.where)).toEqual(['apical']);
		const [{ area_mm2, normal }] = worn.facets;
		const { mesh } = sculpted(plainForm({ taper: 'bullet', ...form, baseWidth_mm: 21 }));
		const [loop] = section(mesh, planeFrame([0, 36.8, 0], [0, 1, 0]), 0);
		expect(Math.abs(area_mm2 / loop.area - 1)).toBeLessThan(0.1);
		expect(normal[1]).toBeGreaterThan(0.999);
	});

	it.each([
		['flat on one side', 'flat-sided', 1, 0],
		['with a thin root, bent inwards', 'oval', 0.8, 25],
	] as const)('a long rooted piece %s does not stand on its side', (_, shape, swelling, lingual_deg) => {
		const { mesh } = sculpted(
			plainForm({
				crownHeight_mm: 10,
				baseLength_mm: 6.8,
				baseWidth_mm: 4,
				sections: [{ at: 0, shape }],
				taper: 'bullet',
				curve: { distal_deg: 0, lingual_deg, startsAt: 0 },
				root: { state: 'full', length_mm: 16, swelling, folded: false },
			}),
			{ detail: 'draft' },
		);
		const result = measureCrown({ positions: mesh.positions, indices: mesh.indices });
		if (!result.ok) throw new Error(result.problem.message);
		const { axialHeight_mm, crownBaseLength_mm, warnings } = result.value;
		expect(Math.abs(axialHeight_mm / 26 - 1)).toBeLessThan(0.02);
		expect(crownBaseLength_mm).toBeLessThan(7);
		expect(warnings.map(({ code }) => code)).toContain('crown-base-not-marked');
	});

	it('a low shell stands on its jagged opening, with a warning', () => {
		// half an ellipsoid, 10 x 8 mm and 7 mm high, torn along a wave of 1.2 mm up and down
		const [around, rings] = [96, 40];
		const positions: number[] = [];
		const indices: number[] = [];
		for (let i = 0; i < rings; i++) {
			for (let j = 0; j < around; j++) {
				const angle = (2 * Math.PI * j) / around;
				const low = (1.2 / 7) * Math.sin(3 * angle);
				const height = low + (1 - low) * (i / rings);
				const radius = Math.sqrt(1 - height * height);
				positions.push(10 * radius * Math.cos(angle), 7 * height, 8 * radius * Math.sin(angle));
				const at = (k: number, l: number): number =>
					k === rings ? rings * around : k * around + (l % around);
				indices.push(at(i, j), at(i + 1, j), at(i, j + 1));
				if (i + 1 < rings) indices.push(at(i, j + 1), at(i + 1, j), at(i + 1, j + 1));
			}
		}
		positions.push(0, 7, 0);
		const mesh = { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
		const result = measureCrown(mesh);
		if (!result.ok) throw new Error(result.problem.message);
		const m = result.value;
		expect(m.warnings.map(({ code }) => code)).toContain('base-rough');
		expect(Math.abs(m.axialHeight_mm / 7 - 1)).toBeLessThan(0.03);
		expect(Math.abs(m.crownBaseLength_mm / 20 - 1)).toBeLessThan(0.05);
	});

	it('a base in the flat end of a hollow crown has its full width', () => {
		const m = measured({ baseWidth_mm: 11, pulp: { height_mm: 10, opening: 0.5 } });
		expect(Math.abs(m.crownBaseWidth_mm / 11 - 1)).toBeLessThan(0.005);
	});

	it('a rough break is the base, with a warning', () => {
		const { mesh } = sculpted(plainForm({ baseWidth_mm: 14, pulp: { height_mm: 4, opening: 0.6 } }));
		let state = 5;
		const positions = mesh.positions.map((x, i, all) => {
			state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
			// only the corners of the flat end, up and down by 0.4 mm: one hundredth of the crown's height
			const p = i - (i % 3);
			const inBase = Math.abs(all[p + 1]) < 1e-4;
			return i % 3 === 1 && inBase ? x + (state / 2 ** 32 - 0.5) * 0.8 : x;
		});
		const result = measureCrown({ positions, indices: mesh.indices });
		if (!result.ok) throw new Error(result.problem.message);
		const m = result.value;
		const codes = m.warnings.map((w) => w.code);
		expect(codes).toContain('base-rough');
		expect(codes).not.toContain('crown-base-not-marked');
		expect(Math.abs(m.axialHeight_mm / 40 - 1)).toBeLessThan(0.02);
		expect(Math.abs(m.crownBaseLength_mm / 20 - 1)).toBeLessThan(0.02);
	});
});
