import { describe, expect, it } from 'vitest';
import { vec3, type Vec3 } from '../../../src/lib/domain/vec3';
import {
	crownMarks,
	crownPoints,
	freeId,
	hitToFile,
	idFault,
	marksToTooth,
	MOST_TILT_deg,
	turnToTooth,
} from '../../../src/lib/ui/desk/marks';
import { History } from '../../../src/lib/ui/desk/history.svelte';

const at = (point: Vec3) => ({ point, normal: null });
const three = { apex: at([1, 20, 0]), mesial: at([-5, 0, 0]), distal: at([5, 0, 0]) };

describe('crownMarks', () => {
	it('waits for all three points', () => {
		expect(crownMarks({ apex: three.apex, distal: three.distal })).toBeNull();
		expect(crownMarks(three)).toEqual({ apex: [1, 20, 0], baseMesial: [-5, 0, 0], baseDistal: [5, 0, 0] });
	});
	it('makes a direction of the outer side, square to the line of the base', () => {
		const { labial } = crownMarks({ ...three, labial: at([2, 0.5, 4]) })!;
		expect(vec3.distance(labial!, vec3.normalise([0, 0.5, 4]))).toBeLessThan(1e-12);
	});
	it('takes only the side from a point put high up the crown', () => {
		const rise = 4 * Math.tan(((MOST_TILT_deg + 1) * Math.PI) / 180);
		const { labial } = crownMarks({ ...three, labial: at([0, rise, -4]) })!;
		expect(vec3.distance(labial!, [0, 0, -1])).toBeLessThan(1e-12);
	});
	it('comes back from the points that were made of it', () => {
		const marks = { ...crownMarks(three)!, labial: vec3.normalise([0, 0.2, -1]) };
		const again = crownMarks(crownPoints(marks))!;
		expect(vec3.distance(again.labial!, marks.labial)).toBeLessThan(1e-12);
		expect(again.apex).toEqual(marks.apex);
		expect(crownPoints(null)).toEqual({});
	});
});

describe('frames', () => {
	const frame = {
		rows: [
			[0, 1, 0],
			[-1, 0, 0],
			[0, 0, 1],
		] as [Vec3, Vec3, Vec3],
		offset: [7, -3, 2] as Vec3,
	};
	it('goes to the file and back', () => {
		const marks = crownMarks({ ...three, labial: at([0, 0, 3]) })!;
		const tooth = marksToTooth(frame, marks);
		for (const key of ['apex', 'baseMesial', 'baseDistal'] as const) {
			const back = hitToFile(frame, { point: tooth[key], normal: [0, 1, 0] });
			expect(vec3.distance(back.point, marks[key])).toBeLessThan(1e-4);
			expect(vec3.distance(turnToTooth(frame, back.normal!), [0, 1, 0])).toBeLessThan(1e-12);
		}
		expect(vec3.distance(tooth.labial!, [0, 0, 1])).toBeLessThan(1e-12);
	});
});

describe('ids', () => {
	it('are lower-case letters, digits and single hyphens, each once', () => {
		expect(idFault('worn-edge-2', [])).toBeNull();
		expect(idFault('', [])).toBe('empty');
		for (const bad of ['Edge', 'edge_1', '-edge', 'edge--1', 'arête', 'a b', 'x'.repeat(61)])
			expect(idFault(bad, []), bad).toBe('letters');
		expect(idFault('pit', ['pit'])).toBe('taken');
	});
	it('are proposed free', () => {
		expect(freeId('pit', [])).toBe('pit');
		expect(freeId('pit', ['pit', 'pit-2'])).toBe('pit-3');
	});
});

describe('History', () => {
	it('undoes and redoes, and forgets what was undone at a new change', () => {
		const history = new History(1);
		history.change(2);
		history.change(3);
		history.undo();
		expect([history.now, history.canUndo, history.canRedo]).toEqual([2, true, true]);
		history.redo();
		expect(history.now).toBe(3);
		history.undo();
		history.change(4);
		expect([history.now, history.canRedo]).toEqual([4, false]);
		history.undo();
		history.undo();
		history.undo();
		expect([history.now, history.canUndo]).toEqual([1, false]);
	});
	it('undoes a drag as one step, and the next drag as another', () => {
		const history = new History(0);
		for (const n of [1, 2, 3]) history.change(n, 'drag a');
		history.settle();
		for (const n of [4, 5]) history.change(n, 'drag a');
		history.undo();
		expect(history.now).toBe(3);
		history.undo();
		expect(history.now).toBe(0);
	});
	it('keeps two hundred steps', () => {
		const history = new History(0);
		for (let n = 1; n <= 250; n += 1) history.change(n);
		let steps = 0;
		for (; history.canUndo; steps += 1) history.undo();
		expect(steps).toBe(200);
		expect(history.now).toBe(50);
	});
});
