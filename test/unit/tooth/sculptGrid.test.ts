import { describe, expect, it } from 'vitest';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { blendGrids } from '../../../src/lib/domain/tooth/blendGrids';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { gridOutline, gridSection, rowAt } from '../../../src/lib/domain/tooth/gridOutline';
import { isClosed } from '../../../src/lib/domain/tooth/isClosed';
import { gridColumns, GRID_ROWS, sculptGrid, type GridTooth } from '../../../src/lib/domain/tooth/sculptGrid';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import { plainForm, sculpted } from './helpers';

const root: ToothForm['root'] = { state: 'full', length_mm: 20, swelling: 1, folded: false };
const cone = plainForm({ root });
const blade = plainForm({
	root,
	baseLength_mm: 22,
	baseWidth_mm: 10,
	sections: [{ at: 0, shape: 'blade' }],
	curve: { distal_deg: 25, lingual_deg: 5, startsAt: 0.1 },
	carinae: [
		{ where: 'mesial', prominence_mm: 0.8, from: 0.05 },
		{ where: 'distal', prominence_mm: 0.8, from: 0.05 },
	],
});
const dome = plainForm({ root, crownHeight_mm: 16, taper: 'dome', tipRadius_mm: 3 });
const columns = gridColumns(blade);
const grid = (form: ToothForm): GridTooth => {
	const made = sculptGrid(form, columns);
	if (!made.ok) throw new Error(made.problem.code);
	return made.value;
};
const teeth = [cone, blade, dome].map(grid);

describe('sculptGrid', () => {
	it('gives every form the same closed triangles, between 4,000 and 9,000 of them', () => {
		for (const { mesh } of teeth) {
			expect(mesh.indices).toEqual(teeth[0].mesh.indices);
			expect(mesh.regions).toEqual(teeth[0].mesh.regions);
			expect(isClosed(mesh)).toBe(true);
			expect(mesh.indices.length / 3).toBeGreaterThan(4000);
			expect(mesh.indices.length / 3).toBeLessThan(9000);
		}
	});

	it('makes the same tooth as the sculptor, to a few parts in a hundred of its volume', () => {
		[cone, blade, dome].forEach((form, i) => {
			const fine = volume(sculpted(form).mesh);
			expect(Math.abs(volume(teeth[i].mesh) / fine - 1)).toBeLessThan(0.03);
		});
	});

	it('is measured as what its form says', () => {
		[cone, blade, dome].forEach((form, i) => {
			const measures = measureCrown(teeth[i].mesh, { marks: teeth[i].marks });
			if (!measures.ok) throw new Error(measures.problem.code);
			expect(measures.value.axialHeight_mm).toBeCloseTo(form.crownHeight_mm, 0);
			expect(measures.value.crownBaseWidth_mm).toBeCloseTo(form.baseWidth_mm, 0);
		});
	});

	it('refuses a form without a full root, and one that the sculptor refuses', () => {
		expect(sculptGrid(plainForm(), columns).ok).toBe(false);
		expect(sculptGrid({ ...cone, crownHeight_mm: -1 }, columns).ok).toBe(false);
	});
});

describe('blendGrids', () => {
	it('gives back a tooth that has all the weight', () => {
		teeth.forEach((tooth, i) => {
			const weights = [0, 1, 2].map((k) => (k === i ? 1 : 0));
			expect(blendGrids(teeth, weights).mesh.positions).toEqual(tooth.mesh.positions);
		});
	});

	it('stays closed and shares its triangles with the first tooth all over the triangle', () => {
		for (const weights of [
			[0.34, 0.33, 0.33],
			[0.5, 0.5, 0],
			[0.1, 0.2, 0.7],
		]) {
			const { mesh, marks } = blendGrids(teeth, weights);
			expect(mesh.indices).toBe(teeth[0].mesh.indices);
			expect(isClosed(mesh)).toBe(true);
			expect(volume(mesh)).toBeGreaterThan(0);
			const height = weights[0] * 40 + weights[1] * 40 + weights[2] * 16;
			expect(marks.apex[1]).toBeCloseTo(height, 1);
		}
	});

	it('moves every point in a straight line from one tooth to the other', () => {
		const half = blendGrids(teeth, [0.5, 0.5, 0]).mesh.positions;
		const [a, b] = teeth.map(({ mesh }) => mesh.positions);
		for (let i = 0; i < half.length; i += 97) expect(half[i]).toBeCloseTo((a[i] + b[i]) / 2, 4);
	});

	it('does not mix grids of different columns', () => {
		const other = sculptGrid(cone, gridColumns(cone));
		if (!other.ok) throw new Error(other.problem.code);
		expect(() => blendGrids([teeth[0], other.value], [0.5, 0.5])).toThrow(/different grids/);
	});
});

describe('gridOutline', () => {
	it('is as tall and as wide as the crown', () => {
		const { crown, root: below } = gridOutline(teeth[0], 'lip');
		expect(Math.max(...crown.map(([, y]) => y))).toBeCloseTo(40, 1);
		expect(Math.max(...crown.map(([x]) => x))).toBeCloseTo(10, 0);
		expect(Math.min(...below.map(([, y]) => y))).toBeCloseTo(-20, 0);
	});

	it('sees a blade broad from the lip and thin from behind', () => {
		const wide = (from: 'lip' | 'behind') => {
			const xs = gridOutline(teeth[1], from).crown.map(([x]) => x);
			return Math.max(...xs) - Math.min(...xs);
		};
		expect(wide('lip')).toBeGreaterThan(1.7 * wide('behind'));
	});

	it('cuts a section with the points of one ring', () => {
		const section = gridSection(teeth[0], rowAt(1));
		expect(section).toHaveLength(columns.length);
		for (const [x, z] of section) expect(Math.hypot(x, z)).toBeCloseTo(10, 1);
		expect(rowAt(0)).toBe(0);
		expect(rowAt(1)).toBe(GRID_ROWS - 1);
	});
});
