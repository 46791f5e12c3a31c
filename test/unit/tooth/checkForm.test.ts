import { describe, expect, it } from 'vitest';
import type { FormProblem, ToothForm } from '../../../src/lib/domain/tooth/form';
import { FORM_LIMITS, FORM_RANGES } from '../../../src/lib/domain/tooth/formRanges';
import { checkForm } from '../../../src/lib/domain/tooth/checkForm';
import { plainForm, refused, sculpted, surfaceFaults } from './helpers';

const edge = { where: 'distal' as const, prominence_mm: 0.5, from: 0 };
const facet = { side: 'labial' as const, angle_deg: 40, depth_mm: 1, at: 0.8 };
const ridges = {
	count: 10,
	height_mm: 0.3,
	sides: 'all' as const,
	from: 0.1,
	to: 0.9,
	alternating: false,
};
const resorbed = { state: 'resorbed' as const, length_mm: 6, pitSide: 'lingual' as const, pitDepth_mm: 4 };

describe('checkForm: legal forms', () => {
	it.each<[string, Partial<ToothForm>]>([
		['a plain cone', {}],
		['edges', { carinae: [edge, { ...edge, where: 'mesial' }, { ...edge, where: 270 }] }],
		['ridges', { ridges }],
		['wear', { wear: { tipWornTo_mm: 30, facets: [facet] } }],
		['a shed stub', { root: resorbed, pulp: { height_mm: 10, opening: 0.6 } }],
	])('%s', (_, changes) => {
		expect(checkForm(plainForm(changes))).toBeNull();
	});
});

describe('checkForm: each illegal form has its own problem', () => {
	it.each<[string, Partial<ToothForm>, FormProblem]>([
		['no section', { sections: [] }, { code: 'sections-empty', path: 'sections', found: 0, min: 1 }],
		[
			'no height',
			{ crownHeight_mm: 0 },
			{ code: 'out-of-range', path: 'crownHeight_mm', found: 0, min: 0.5, max: 300 },
		],
		[
			'height that is no number',
			{ crownHeight_mm: NaN },
			{ code: 'out-of-range', path: 'crownHeight_mm', found: NaN, min: 0.5, max: 300 },
		],
		[
			'section above the tip',
			{ sections: [{ at: 1.2, shape: 'round' }] },
			{ code: 'out-of-range', path: 'sections[0].at', found: 1.2, min: 0, max: 1 },
		],
		[
			'two sections at one height',
			{
				sections: [
					{ at: 0.5, shape: 'round' },
					{ at: 0.52, shape: 'blade' },
				],
			},
			{
				code: 'out-of-range',
				path: 'sections[1].at',
				found: 0.52,
				min: 0.5 + FORM_LIMITS.stopsApart,
				max: 1,
			},
		],
		[
			'too thin a blade',
			{ baseWidth_mm: 2 },
			{ code: 'out-of-range', path: 'baseWidth_mm', found: 2, min: 20 / 6, max: 120 },
		],
		[
			'turning back on itself',
			{ curve: { distal_deg: 60, lingual_deg: 80, startsAt: 0 } },
			{ code: 'out-of-range', path: 'curve', found: 100, min: 0, max: 80 },
		],
		[
			'tip wider than the crown',
			{ baseWidth_mm: 10, tipRadius_mm: 5 },
			{ code: 'tip-too-blunt', path: 'tipRadius_mm', found: 5, max: FORM_LIMITS.tipOverRadius * 5 },
		],
		[
			'edge taller than the section bears',
			{ carinae: [{ ...edge, prominence_mm: 6 }] },
			{ code: 'ridge-too-tall', path: 'carinae[0].prominence_mm', found: 6, max: 5 },
		],
		[
			'serrations finer than the mesh',
			{ carinae: [{ ...edge, serrationsPer5mm: 50 }] },
			{
				code: 'serration-too-fine',
				path: 'carinae[0].serrationsPer5mm',
				found: 50,
				max: (5 * FORM_LIMITS.denticles) / Math.hypot(40, 10),
			},
		],
		[
			'notches deeper than the edge',
			{ carinae: [{ ...edge, serrationsPer5mm: 4, serrationDepth_mm: 0.7 }] },
			{ code: 'out-of-range', path: 'carinae[0].serrationDepth_mm', found: 0.7, min: 0, max: 0.5 },
		],
		[
			'ridges taller than their gaps bear',
			{ ridges: { ...ridges, count: 40, height_mm: 2 } },
			{
				code: 'ridge-too-tall',
				path: 'ridges.height_mm',
				found: 2,
				max: (FORM_LIMITS.ridgeOverGap * Math.PI * 20) / 40,
			},
		],
		[
			'too many ridges',
			{ ridges: { ...ridges, count: 60 } },
			{ code: 'out-of-range', path: 'ridges.count', found: 60, min: 0, max: FORM_RANGES['ridges.count'][1] },
		],
		[
			'half a ridge',
			{ ridges: { ...ridges, count: 7.5 } },
			{ code: 'out-of-range', path: 'ridges.count', found: 7.5, min: 7, max: 8 },
		],
		[
			'ridges that end before they begin',
			{ ridges: { ...ridges, from: 0.6, to: 0.5 } },
			{ code: 'out-of-range', path: 'ridges.to', found: 0.5, min: 0.7, max: 1 },
		],
		[
			'a cavity up to the tip',
			{ pulp: { height_mm: 39, opening: 0.5 } },
			{ code: 'pulp-breaks-out', path: 'pulp.height_mm', found: 39, max: FORM_LIMITS.pulpOverHeight * 40 },
		],
		[
			'a cavity below a bare crown',
			{ pulp: { height_mm: -1, opening: 0.5 } },
			{ code: 'out-of-range', path: 'pulp.height_mm', found: -1, min: 0.8, max: 35.2 },
		],
		[
			'an opening without a wall',
			{ pulp: { height_mm: 10, opening: 0.95 } },
			{ code: 'out-of-range', path: 'pulp.opening', found: 0.95, min: 0.1, max: 0.9 },
		],
		[
			'a pit through the root',
			{ root: { ...resorbed, pitDepth_mm: 9 } },
			{ code: 'out-of-range', path: 'root.pitDepth_mm', found: 9, min: 0.02, max: 8 },
		],
		[
			'a neck longer than its root',
			{ root: resorbed, neck: { constriction: 0.1, length_mm: 6 } },
			{ code: 'out-of-range', path: 'neck.length_mm', found: 6, min: 0.05, max: 0.8 * 6 },
		],
		[
			'a tip worn to nothing',
			{ wear: { tipWornTo_mm: 2 } },
			{ code: 'no-crown-left', path: 'wear.tipWornTo_mm', found: 2, min: FORM_LIMITS.crownLeft * 40 },
		],
		[
			'a tip worn above itself',
			{ wear: { tipWornTo_mm: 41 } },
			{ code: 'out-of-range', path: 'wear.tipWornTo_mm', found: 41, min: 4.8, max: 40 },
		],
		[
			'a facet too flat',
			{ wear: { facets: [{ ...facet, angle_deg: 90 }] } },
			{ code: 'out-of-range', path: 'wear.facets[0].angle_deg', found: 90, min: 5, max: 85 },
		],
	])('%s', (_, changes, problem) => {
		const form = plainForm(changes);
		const found = refused(form);
		expect(found).toMatchObject({ code: problem.code, path: problem.path });
		for (const key of ['found', 'min', 'max'] as const) {
			if (problem[key] === undefined) expect(found[key]).toBeUndefined();
			else if (Number.isNaN(problem[key])) expect(found[key]).toBeNaN();
			else expect(found[key]).toBeCloseTo(problem[key], 6);
		}
		expect(checkForm(form)).toEqual(found);
	});

	it('keels whose feet would meet', () => {
		const carinae = [
			{ ...edge, where: 0, prominence_mm: 1.5 },
			{ ...edge, where: 15, prominence_mm: 1.5 },
		];
		const found = refused(plainForm({ carinae }));
		expect(found.code).toBe('ridge-too-tall');
		expect(found.max).toBeLessThan(1.5);
		expect(checkForm(plainForm({ carinae: [carinae[0], { ...carinae[1], where: 90 }] }))).toBeNull();
	});

	it('a bend tighter than the crown is thick', () => {
		const form = plainForm({ crownHeight_mm: 14, curve: { distal_deg: 75, lingual_deg: 0, startsAt: 0 } });
		expect(refused(form)).toMatchObject({ code: 'out-of-range', path: 'curve', found: 75 });
		expect(checkForm({ ...form, crownHeight_mm: 40 })).toBeNull();
	});

	it("a facet steeper than the crown's side, which would cut the root: the least angle is quoted and works", () => {
		const root = { state: 'full' as const, length_mm: 30, swelling: 1, folded: false };
		const form = plainForm({ root, wear: { facets: [{ ...facet, angle_deg: 6 }] } });
		const problem = refused(form);
		expect(problem).toMatchObject({
			code: 'out-of-range',
			path: 'wear.facets[0].angle_deg',
			found: 6,
			max: 85,
		});
		// the side of the cone itself leans by atan(10 / 40) = 14 degrees
		expect(problem.min).toBeGreaterThan(14);
		expect(problem.min).toBeLessThan(25);
	});

	it('serrations that the mesh could carry only without its many ridges', () => {
		const carinae = [{ ...edge, serrationsPer5mm: 8 }];
		const many = { ...ridges, count: 48, height_mm: 0.2 };
		expect(checkForm(plainForm({ carinae, ridges: many }))).toBeNull();
		const problem = refused(plainForm({ carinae, ridges: many }));
		expect(problem).toMatchObject({
			code: 'serration-too-fine',
			path: 'carinae[0].serrationsPer5mm',
			found: 8,
		});
		// what is quoted as possible is possible
		const possible = [{ ...edge, serrationsPer5mm: 0.99 * (problem.max ?? 0) }];
		expect(surfaceFaults(sculpted(plainForm({ carinae: possible, ridges: many })).mesh)).toEqual([]);
	});

	it('a facet that takes the whole crown', () => {
		const form = plainForm({ wear: { facets: [{ ...facet, angle_deg: 80, depth_mm: 60, at: 0.3 }] } });
		expect(refused(form)).toMatchObject({ code: 'no-crown-left', path: 'wear.facets[0].depth_mm' });
	});
});
