import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { REGIONS } from '../../../src/lib/domain/mesh/triMesh';
import { checkForm } from '../../../src/lib/domain/tooth/checkForm';
import { SECTION_SHAPES, SIDES, TAPERS, type ToothForm } from '../../../src/lib/domain/tooth/form';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import {
	enclosedVolume,
	heights,
	plainForm,
	regionArea,
	sculpted,
	sectionExtent,
	surfaceFaults,
	triangleAreas,
} from './helpers';

const SEED = 20261125;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const side = fc.constantFrom(...SIDES);

/** Forms over nearly the whole legal ground; those that checkForm refuses are left out by the property. */
const anyForm: fc.Arbitrary<ToothForm> = fc
	.record({
		length: between(4, 50),
		slender: between(0.7, 4),
		ratio: between(0.5, 1.4),
		tip: between(0.02, 0.3),
		stops: fc.array(
			fc.record({
				at: between(0, 1),
				shape: fc.constantFrom(...SECTION_SHAPES),
				widthFactor: fc.option(between(0.7, 1.2), { nil: undefined }),
			}),
			{ minLength: 1, maxLength: 3 },
		),
		taper: fc.constantFrom(...TAPERS),
		distal_deg: between(-40, 55),
		lingual_deg: between(-20, 30),
		startsAt: between(0, 0.5),
		edges: fc.uniqueArray(
			fc.record({
				where: side,
				share: between(0.02, 0.12),
				from: between(0, 0.6),
				teeth: fc.constantFrom(0, 0, 0.3),
			}),
			{ maxLength: 3, selector: (edge) => edge.where },
		),
		ridges: fc.option(
			fc.record({
				count: fc.integer({ min: 1, max: 20 }),
				share: between(0.005, 0.04),
				sides: fc.constantFrom('all' as const, 'labial' as const, 'lingual' as const),
				from: between(0, 0.3),
				to: between(0.5, 1),
				alternating: fc.boolean(),
			}),
			{ nil: undefined },
		),
		neck: fc.option(between(0, 0.4), { nil: undefined }),
		root: fc.constantFrom('none' as const, 'full' as const, 'open' as const, 'resorbed' as const),
		rootShare: between(0.2, 2),
		swelling: between(0.6, 1.8),
		folded: fc.boolean(),
		pitSide: side,
		pit: between(0.05, 0.35),
		pulp: fc.option(fc.record({ height: between(0.05, 0.8), opening: between(0.1, 0.9) }), {
			nil: undefined,
		}),
		worn: fc.option(between(0.6, 0.99), { nil: undefined }),
		facets: fc.array(
			fc.record({ side, angle_deg: between(15, 80), share: between(0.01, 0.08), at: between(0.5, 0.98) }),
			{ maxLength: 2 },
		),
	})
	.map((p): ToothForm => {
		const crownHeight_mm = p.length * p.slender;
		const baseWidth_mm = p.length * p.ratio;
		const length_mm = crownHeight_mm * p.rootShare;
		const root = {
			none: { state: 'none' as const },
			full: { state: 'full' as const, length_mm, swelling: p.swelling, folded: p.folded },
			open: { state: 'open' as const, length_mm: length_mm * 0.3 },
			resorbed: {
				state: 'resorbed' as const,
				length_mm: length_mm * 0.2,
				pitSide: p.pitSide,
				pitDepth_mm: p.pit * Math.min(p.length, baseWidth_mm),
			},
		}[p.root];
		return {
			crownHeight_mm,
			baseLength_mm: p.length,
			baseWidth_mm,
			sections: p.stops,
			taper: p.taper,
			curve: { distal_deg: p.distal_deg, lingual_deg: p.lingual_deg, startsAt: p.startsAt },
			tipRadius_mm: p.tip * Math.min(p.length, baseWidth_mm) * 0.5,
			carinae: p.edges.map((edge) => ({
				where: edge.where,
				prominence_mm: edge.share * Math.min(p.length, baseWidth_mm),
				from: edge.from,
				// spacing in step with the size of the tooth
				serrationsPer5mm: edge.teeth === 0 ? undefined : (edge.teeth * 5 * 100) / crownHeight_mm / 2,
			})),
			ridges: p.ridges && {
				count: p.ridges.count,
				height_mm: p.ridges.share * Math.min(p.length, baseWidth_mm),
				sides: p.ridges.sides,
				from: p.ridges.from,
				to: p.ridges.to,
				alternating: p.ridges.alternating,
			},
			neck:
				p.neck === undefined || root.state === 'none'
					? undefined
					: { constriction: p.neck, length_mm: 0.3 * root.length_mm },
			root,
			pulp: p.pulp && { height_mm: p.pulp.height * crownHeight_mm, opening: p.pulp.opening },
			wear: {
				tipWornTo_mm: p.worn === undefined ? undefined : p.worn * crownHeight_mm,
				facets: p.facets.map(({ side, angle_deg, share, at }) => ({
					side,
					angle_deg,
					depth_mm: share * Math.min(p.length, baseWidth_mm),
					at,
				})),
			},
		};
	})
	.filter((form) => checkForm(form) === null);

/** The surface of a form; facets that would reach the root or leave no crown are taken away first. */
function surfaceOf(form: ToothForm, detail: 'full' | 'draft') {
	const result = sculpt(form, { detail });
	if (result.ok) return { form, ...result.value };
	expect(['no-crown-left', 'out-of-range']).toContain(result.problem.code);
	expect(result.problem.path).toMatch(/^wear\.facets\[\d\]\.(angle_deg|depth_mm)$/);
	const unworn = { ...form, wear: undefined };
	return { form: unworn, ...sculpted(unworn, { detail }) };
}

describe(`sculpt: any legal form (seed ${SEED})`, () => {
	const holds = (detail: 'full' | 'draft', numRuns: number) =>
		fc.assert(
			fc.property(anyForm, (asked) => {
				const { form, mesh, marks } = surfaceOf(asked, detail);
				expect(surfaceFaults(mesh)).toEqual([]);
				expect(enclosedVolume(mesh)).toBeGreaterThan(0);

				const areas = triangleAreas(mesh);
				const total = areas.reduce((a, b) => a + b, 0);
				const nothing = areas.filter((area) => area < 1e-10 * total).length;
				expect(nothing / areas.length).toBeLessThan(0.03);

				// lengths are what the form says
				const [low, high] = heights(mesh);
				if (!form.wear?.facets?.length) {
					const top = Math.min(form.wear?.tipWornTo_mm ?? Infinity, form.crownHeight_mm);
					expect(Math.abs(high / top - 1)).toBeLessThan(0.01);
				}
				expect(marks.apex[1]).toBeCloseTo(high, 4);
				const { length_mm, width_mm } = sectionExtent(mesh, 1e-4 * form.crownHeight_mm);
				expect(Math.abs(length_mm / form.baseLength_mm - 1)).toBeLessThan(0.01);
				expect(Math.abs(width_mm / form.baseWidth_mm - 1)).toBeLessThan(0.01);
				const marked = Math.hypot(
					marks.baseDistal[0] - marks.baseMesial[0],
					marks.baseDistal[2] - marks.baseMesial[2],
				);
				expect(Math.abs(marked / form.baseLength_mm - 1)).toBeLessThan(0.001);
				expect(marks.baseDistal[1]).toBeCloseTo(0, 6);
				if (form.root.state === 'none') expect(low).toBeCloseTo(0, 4);
				else expect(Math.abs(low / -form.root.length_mm - 1)).toBeLessThan(0.25);

				// regions are there when asked for
				const has = (region: (typeof REGIONS)[number]) => regionArea(mesh, region) > 0;
				expect(has('enamel')).toBe(true);
				expect(has('pit')).toBe(form.root.state === 'resorbed');
				expect(has('root')).toBe(form.root.state !== 'none');
				expect(has('pulp')).toBe(form.pulp !== undefined || form.root.state === 'open');
				if (form.carinae.length === 0) expect(has('carina')).toBe(false);
				if (!form.ridges) expect(has('ridge')).toBe(false);
				if (form.wear?.tipWornTo_mm) expect(has('facet')).toBe(true);
			}),
			{ seed: SEED, numRuns },
		);
	it('draft', () => holds('draft', 150));
	it('full', () => holds('full', 25), 60_000);
});

describe('sculpt: features', () => {
	const rooted = plainForm({
		taper: 'bullet',
		root: { state: 'full', length_mm: 40, swelling: 1.2, folded: false },
	});

	it('gives cutting edges where they are asked, standing out by their prominence', () => {
		const form = plainForm({ carinae: [{ where: 'mesial', prominence_mm: 0.8, from: 0.1 }] });
		const [plain, edged] = [sculpted(plainForm()), sculpted(form)];
		expect(regionArea(edged.mesh, 'carina')).toBeGreaterThan(0);
		const grown = sectionExtent(edged.mesh, 20).length_mm - sectionExtent(plain.mesh, 20).length_mm;
		expect(grown).toBeCloseTo(0.8, 1);
		expect(sectionExtent(edged.mesh, 3).length_mm).toBeCloseTo(sectionExtent(plain.mesh, 3).length_mm, 2);
	});

	it('notches a serrated edge as often as asked', () => {
		const form = plainForm({
			carinae: [
				{ where: 'distal', prominence_mm: 1, from: 0.1, serrationsPer5mm: 6, serrationDepth_mm: 0.4 },
			],
		});
		const { mesh } = sculpted(form);
		// the outermost x at each height, less the cone's own: count the dips over 10 mm of height
		const dips: number[] = [];
		const profile: number[] = [];
		for (let y = 14; y <= 24; y += 0.02) {
			const { length_mm } = sectionExtent(mesh, y);
			profile.push(length_mm - (20 * (40 - y)) / 40);
		}
		for (let i = 1; i + 1 < profile.length; i++)
			if (profile[i] < profile[i - 1] && profile[i] <= profile[i + 1] && profile[i] < 1.05) dips.push(i);
		const edge_mm = 10 * Math.hypot(1, 10 / 40);
		expect(Math.abs(dips.length - (edge_mm / 5) * 6)).toBeLessThanOrEqual(1);
	});

	it('raises as many ridges as asked', () => {
		const form = plainForm({
			ridges: { count: 14, height_mm: 0.4, sides: 'all', from: 0.05, to: 0.9, alternating: false },
		});
		const { mesh } = sculpted(form);
		// radii round the section at mid height
		const around: { angle: number; radius: number }[] = [];
		for (let f = 0; f < mesh.indices.length; f += 3)
			for (let k = 0; k < 3; k++) {
				const [a, b] = [3 * mesh.indices[f + k], 3 * mesh.indices[f + ((k + 1) % 3)]];
				const [ya, yb] = [mesh.positions[a + 1], mesh.positions[b + 1]];
				if (ya > 15 === yb > 15) continue;
				const t = (15 - ya) / (yb - ya);
				const x = mesh.positions[a] + (mesh.positions[b] - mesh.positions[a]) * t;
				const z = mesh.positions[a + 2] + (mesh.positions[b + 2] - mesh.positions[a + 2]) * t;
				around.push({ angle: Math.atan2(z, x), radius: Math.hypot(x, z) });
			}
		around.sort((a, b) => a.angle - b.angle);
		const middle = (Math.max(...around.map((p) => p.radius)) + Math.min(...around.map((p) => p.radius))) / 2;
		const rises = around.filter((p, i) => {
			const before = around[(i - 1 + around.length) % around.length];
			return before.radius < middle && p.radius >= middle;
		});
		expect(rises).toHaveLength(14);
		expect(regionArea(mesh, 'ridge')).toBeGreaterThan(0);
	});

	it('wears the tip flat at the height given, over the area of the cone there', () => {
		const { mesh, marks } = sculpted(plainForm({ tipRadius_mm: 0.01, wear: { tipWornTo_mm: 30 } }));
		expect(marks.apex[1]).toBeCloseTo(30, 4);
		expect(Math.hypot(marks.apex[0], marks.apex[2])).toBeLessThan(0.05);
		// circle of a quarter of the base radius, area pi r^2
		expect(Math.abs(regionArea(mesh, 'facet') / (Math.PI * 2.5 ** 2) - 1)).toBeLessThan(0.02);
	});

	it('turns the tip towards distal and lingual', () => {
		const { marks } = sculpted(plainForm({ curve: { distal_deg: 40, lingual_deg: 15, startsAt: 0 } }));
		expect(marks.apex[0]).toBeGreaterThan(8);
		expect(marks.apex[2]).toBeLessThan(-3);
	});

	it('eats the pit into the named side only', () => {
		const form = plainForm({
			root: { state: 'resorbed', length_mm: 8, pitSide: 'lingual', pitDepth_mm: 5 },
		});
		const { mesh } = sculpted(form);
		const pit = REGIONS.indexOf('pit');
		const wallAt = (sign: number): number => {
			let reach = 0;
			for (let i = 0; i < mesh.positions.length; i += 3)
				if (Math.abs(mesh.positions[i + 1] + 5) < 0.5 && Math.abs(mesh.positions[i]) < 1)
					reach = Math.max(reach, sign * mesh.positions[i + 2]);
			return reach;
		};
		expect(wallAt(1) - wallAt(-1)).toBeGreaterThan(4);
		expect(wallAt(1) - wallAt(-1)).toBeLessThan(5.5);
		expect(mesh.regions?.includes(pit)).toBe(true);
	});

	it('makes the root as wide as its swelling says', () => {
		const { mesh } = sculpted(rooted);
		let widest = 0;
		for (let y = -39; y < 0; y += 0.5) widest = Math.max(widest, sectionExtent(mesh, y).width_mm);
		expect(widest / (20 * 1.2)).toBeCloseTo(1, 1.5);
	});

	it('narrows at the neck by its constriction', () => {
		const { mesh } = sculpted({ ...rooted, neck: { constriction: 0.2, length_mm: 12 } });
		expect(sectionExtent(mesh, -6).width_mm / 20).toBeGreaterThan(0.78);
		expect(sectionExtent(mesh, -6).width_mm / 20).toBeLessThan(0.83);
	});

	it('takes an open crown for a thin shell', () => {
		const solid = sculpted(rooted).mesh;
		const shell = sculpted({ ...rooted, root: { state: 'open', length_mm: 5 } }).mesh;
		expect(enclosedVolume(shell)).toBeLessThan(0.6 * enclosedVolume(solid));
	});

	it('keeps to its budget of triangles', () => {
		const full = sculpted(rooted).mesh.indices.length / 3;
		const draft = sculpted(rooted, { detail: 'draft' }).mesh.indices.length / 3;
		expect(full).toBeGreaterThan(10_000);
		expect(full).toBeLessThan(24_000);
		expect(draft).toBeLessThan(4_000);
		const serrated = sculpted({
			...rooted,
			carinae: [{ where: 'distal', prominence_mm: 0.8, from: 0, serrationsPer5mm: 10 }],
		}).mesh;
		expect(serrated.indices.length / 3).toBeLessThan(95_000);
	});

	it('always makes the same surface from the same form', () => {
		const [first, second] = [sculpted(rooted), sculpted(structuredClone(rooted))];
		expect(second.mesh.positions).toEqual(first.mesh.positions);
		expect(second.mesh.indices).toEqual(first.mesh.indices);
		expect(second.mesh.regions).toEqual(first.mesh.regions);
	});
});
