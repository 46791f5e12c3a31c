import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { bite, type Bite } from '../../../src/lib/domain/feeding/bite';
import { biterOf, type Biter } from '../../../src/lib/domain/feeding/biter';
import { breakingForce } from '../../../src/lib/domain/feeding/breakingForce';
import { evidenceOf } from '../../../src/lib/domain/feeding/evidence';
import { everydayForce } from '../../../src/lib/domain/feeding/everydayForce';
import { formAt } from '../../../src/lib/domain/feeding/formAt';
import { asPosition } from '../../../src/lib/domain/feeding/position';
import { forceScale, scaledBeam, scaledForm, scaledIndenter } from '../../../src/lib/domain/feeding/scaled';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import { checkForm } from '../../../src/lib/domain/tooth/checkForm';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import type { FeedingView, PreyView } from '../../../src/lib/content/feedingView';
import { feedingFor } from '../../../src/lib/server/feedingFor';
import { demoFeeding } from '../../reference/feedingContent';

let view: FeedingView;
let teeth: Record<'needle' | 'blade' | 'dome' | 'stout', Biter>;

beforeAll(async () => {
	view = feedingFor(await demoFeeding(), new Map(), 'en', 'en');
	const at = (p: number, c: number, k: number): Biter => {
		const made = sculpt(formAt(asPosition(p, c, k), 30, view.thresholds));
		if (!made.ok) throw new Error(made.problem.code);
		const measured = measureCrown(made.value.mesh, { marks: made.value.marks });
		if (!measured.ok) throw new Error(measured.problem.code);
		return biterOf(measured.value, evidenceOf(measured.value, view.thresholds));
	};
	teeth = { needle: at(1, 0, 0), blade: at(0, 1, 0), dome: at(0, 0, 1), stout: at(1, 1, 1) };
}, 30_000);

const preyOf = (id: string): PreyView => view.prey.find((prey) => prey.id === id)!;
const bitten = (tooth: keyof typeof teeth, prey: string): Bite =>
	bite(teeth[tooth], preyOf(prey), {
		crown: view.crown,
		edgedShare: view.thresholds.edgedShare,
		sidePull_deg: view.thresholds.sidePull_deg,
	});

describe('a bite', () => {
	it('has six prey to choose from, the softest first', () => {
		expect(view.prey.map(({ id }) => id)).toEqual([
			'squid-mantle',
			'skin-and-muscle',
			'mollusc-shell',
			'bony-fish',
			'bone',
			'turtle-shell',
		]);
	});

	it('starts at nothing, rises in what is soft, and ends at the goal', () => {
		for (const tooth of Object.keys(teeth) as (keyof typeof teeth)[]) {
			const { curve, goal_mm, needed_N } = bitten(tooth, 'squid-mantle');
			expect(curve[0]).toMatchObject({ depth_mm: 0, force_N: 0 });
			expect(curve[curve.length - 1].depth_mm).toBeCloseTo(goal_mm, 9);
			expect(curve.every(({ force_N }, i) => i === 0 || force_N >= curve[i - 1].force_N)).toBe(true);
			expect(needed_N).toBe(Math.max(...curve.map(({ force_N }) => force_N)));
		}
	});

	it('a sharp tooth needs less than a blunt one in what is soft', () => {
		const need = (tooth: keyof typeof teeth, prey: string) => bitten(tooth, prey).needed_N;
		for (const prey of ['squid-mantle', 'skin-and-muscle']) {
			expect(need('needle', prey)).toBeLessThan(need('stout', prey));
			expect(need('stout', prey)).toBeLessThan(need('dome', prey));
		}
	});

	it('a needle snaps on shell and bone, a dome holds', () => {
		for (const prey of ['bone', 'turtle-shell']) {
			const [needle, dome] = [bitten('needle', prey), bitten('dome', prey)];
			expect(needle.safety).toBeLessThan(1);
			expect(needle.snapsAt_mm).not.toBeNull();
			expect(dome.safety).toBeGreaterThan(3);
			expect(dome.snapsAt_mm).toBeNull();
		}
		expect(bitten('needle', 'squid-mantle').safety).toBeGreaterThan(3);
	});

	it('a shell cracks as a whole under a dome, and stops resisting', () => {
		const { layers, curve } = bitten('dome', 'turtle-shell');
		expect(layers.map(({ how }) => how)).toEqual(['cracked', 'cracked', 'cracked']);
		expect(curve[curve.length - 1].force_N).toBe(0);
	});

	it('safety is what breaks it over what it needs at the worst depth', () => {
		const { safety, breaking, worst, stress } = bitten('blade', 'bony-fish');
		expect(safety).toBeCloseTo(breaking.force_N / worst.force_N, 9);
		expect(stress.peak.tension_MPa * safety).toBeCloseTo(view.crown.strength_MPa, 3);
	});

	it('says where its model ends', () => {
		const codes = (b: Bite) => b.notes.map(({ code }) => code);
		expect(codes(bitten('needle', 'bone'))).toContain('beyond-elastic');
		expect(codes(bitten('blade', 'bone'))).toContain('edges-not-tested');
		expect(codes(bitten('dome', 'mollusc-shell'))).toContain('stubby-beam');
		expect(codes(bitten('stout', 'skin-and-muscle'))).toEqual(
			expect.arrayContaining(['mammal-strength', 'teaching-model', 'recalled', 'stand-in']),
		);
		const small = bite({ ...teeth.needle, crownHeight_mm: 5 }, preyOf('skin-and-muscle'), {
			crown: view.crown,
			edgedShare: 0.7,
			sidePull_deg: 20,
		});
		expect(codes(small)).toContain('deeper-than-crown');
		expect(small.goal_mm).toBe(5);
		expect(small.layers.map(({ how }) => how)).toEqual(['pierced', 'entered']);
	});
});

describe('biterOf', () => {
	it('takes a tip worn flat for as blunt as it is, and says so', () => {
		const form = formAt(asPosition(1, 1, 1), 30, view.thresholds);
		const made = sculpt({ ...form, wear: { tipWornTo_mm: 18 } });
		if (!made.ok) throw new Error(made.problem.code);
		const measured = measureCrown(made.value.mesh, { marks: made.value.marks });
		if (!measured.ok) throw new Error(measured.problem.code);
		const worn = biterOf(measured.value, evidenceOf(measured.value, view.thresholds));
		expect(worn.notes.map(({ code }) => code)).toEqual(['tip-not-told']);
		expect(worn.indenter.tipRadius_mm).toBeGreaterThan(2 * teeth.stout.indenter.tipRadius_mm);
		const need = (tooth: Biter) =>
			bite(tooth, preyOf('skin-and-muscle'), { crown: view.crown, edgedShare: 0.7, sidePull_deg: 20 })
				.needed_N;
		expect(need(worn)).toBeGreaterThan(need(teeth.stout));
	});
});

describe('size', () => {
	// dimensional analysis: at the same pressures force goes with the square of length
	it('k times the tooth on k times the prey needs and stands k squared', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.1, max: 10, noNaN: true }),
				fc.constantFrom('squid-mantle', 'bony-fish'),
				(k, id) => {
					const options = { crown: view.crown, edgedShare: 0.7, sidePull_deg: 20 };
					const [tooth, prey] = [teeth.blade, preyOf(id)];
					const one = bite(tooth, prey, options);
					const scaled = bite(
						{
							...tooth,
							crownHeight_mm: tooth.crownHeight_mm * k,
							indenter: scaledIndenter(tooth.indenter, k),
							beam: scaledBeam(tooth.beam, k),
							face: { radius_mm: tooth.face.radius_mm * k, halfWidth_mm: tooth.face.halfWidth_mm * k },
						},
						{ layers: prey.layers.map((layer) => ({ ...layer, thickness_mm: layer.thickness_mm * k })) },
						options,
					);
					expect(scaled.needed_N / one.needed_N / forceScale(k)).toBeCloseTo(1, 6);
					const load = { angle_deg: 60, plane: 'LL' } as const;
					const snaps = (beam: Biter['beam']) => breakingForce(beam, load, 338).force_N;
					expect(snaps(scaledBeam(tooth.beam, k)) / snaps(tooth.beam) / forceScale(k)).toBeCloseTo(1, 6);
					expect(scaled.safety / one.safety).toBeCloseTo(1, 2);
				},
			),
			{ numRuns: 40 },
		);
	});

	it('a scaled form can be sculpted and keeps its shape', () => {
		const form = formAt(asPosition(0.2, 0.6, 0.2), 20, view.thresholds);
		const large = scaledForm(form, 4);
		expect(checkForm(large)).toBeNull();
		expect(large.crownHeight_mm / large.baseLength_mm).toBeCloseTo(
			form.crownHeight_mm / form.baseLength_mm,
			9,
		);
		expect(large.carinae[0].prominence_mm).toBeCloseTo(4 * form.carinae[0].prominence_mm, 9);
	});
});

describe('everydayForce', () => {
	// F = m g, standard gravity 9.80665 m/s2
	it('finds the heaviest thing that is reached, and how many of it', () => {
		const apple = { id: 'apple', mass_kg: 0.1 };
		const cat = { id: 'cat', mass_kg: 4 };
		expect(everydayForce(0.980665, [apple, cat])).toEqual({ thing: apple, times: 1 });
		const found = everydayForce(80, [apple, cat])!;
		expect(found.thing).toBe(cat);
		expect(found.times).toBeCloseTo(80 / (4 * 9.80665), 9);
		expect(everydayForce(30, [cat, apple])!.thing).toBe(apple);
		expect(everydayForce(0.2, [cat, apple])!.times).toBeCloseTo(0.2 / 0.980665, 9);
		expect(everydayForce(0, [apple])).toBeNull();
		expect(everydayForce(5, [])).toBeNull();
	});
});
