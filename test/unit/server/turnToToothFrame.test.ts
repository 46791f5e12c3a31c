import { describe, expect, it } from 'vitest';
import { toTooth, turnToFile } from '../../../src/lib/content/fileFrame';
import type { CrownMarks } from '../../../src/lib/domain/measure/crownMeasures';
import { turnToToothFrame } from '../../../src/lib/server/prepare/turnToToothFrame';
import { measures } from './samples';

/** Marks of a crown 20 mm high on a base 10 mm long; its tip leans 3 mm to the lip, which the file has along +x. */
const marks: CrownMarks = {
	apex: [103, 50, 20],
	baseMesial: [100, 45, 0],
	baseDistal: [100, 55, 0],
	labial: [1, 0, 0],
};
const mesh = {
	positions: Float32Array.from([103, 50, 20, 100, 45, 0, 100, 55, 0, 100, 50, -30]),
	indices: Uint32Array.from([0, 1, 2, 1, 3, 2]),
};
const own = {
	...measures,
	...marks,
	axialHeight_mm: 20,
	facets: [{ area_mm2: 1, normal: [1, 0, 0] as const, where: 'labial' as const }],
};

describe('turnToToothFrame', () => {
	it('stands a marked tooth on its base, however far its root reaches and its tip leans', () => {
		const turned = turnToToothFrame(mesh, own, marks);
		const round = (values: ArrayLike<number>): number[] =>
			Array.from(values, (value) => Math.round(value * 1e4) / 1e4 + 0);
		// x distal (+y of the file), y apical (+z of the file), so z = x cross y is +x of the file
		expect(round(turned.mesh.positions)).toEqual([0, 20, 3, -5, 0, 0, 5, 0, 0, 0, -30, 0]);
		expect(turned.labial).toBe('+z');
		expect(round(turned.measures.apex)).toEqual(round(turned.mesh.positions.subarray(0, 3)));
		expect(round(toTooth(turned.frame, marks.apex))).toEqual(round(turned.measures.apex));
		expect(round(turnToFile(turned.frame, turned.measures.facets[0].normal))).toEqual([1, 0, 0]);
	});

	it('never mirrors: on a tooth of the other side the lip lies along -z', () => {
		const { baseMesial, baseDistal } = marks;
		const other = { ...marks, baseMesial: baseDistal, baseDistal: baseMesial };
		const turned = turnToToothFrame(mesh, { ...own, ...other }, other);
		expect(turned.labial).toBe('-z');
		expect(turned.measures.apex[2]).toBeCloseTo(-3, 6);
		const { labial: _labial, ...unlabelled } = other;
		expect(turnToToothFrame(mesh, { ...own, ...other }, unlabelled).labial).toBeUndefined();
	});
});
