import { describe, expect, it } from 'vitest';
import { layOver, type LaidTooth } from '../../src/lib/domain/compare/layOver';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import { lineDrawing, type DrawnView } from '../../src/lib/domain/mesh/lineDrawing';
import { orient } from '../../src/lib/domain/mesh/orient';
import { weld } from '../../src/lib/domain/mesh/weld';
import type { Vec3 } from '../../src/lib/domain/vec3';
import { turnToToothFrame } from '../../src/lib/server/prepare/turnToToothFrame';
import { demoShapes, type DemoShape } from '../unit/compare/demoShapes';
import { rotation } from '../unit/mesh/shapes';

const drawn = (...outlines: number[][]): DrawnView => ({
	min: [0, 0],
	max: [0, 0],
	lines: outlines.map((points) => ({ kind: 'outline', points, closed: true })),
	dots: [],
});
const tooth = (axialHeight_mm: number, ...outlines: number[][]): LaidTooth => ({
	view: drawn(...outlines),
	axialHeight_mm,
});
/** A crown like a triangle that leans, and a root below it. */
const leaning = (half: number, height: number, lean: number) => [
	...[-half, 0, -half, -9, half, -9, half, 0, lean, height],
];

describe('layOver against plain figures', () => {
	it('at true scale a crown half as large covers a quarter of the other', () => {
		const laid = layOver(tooth(20, leaning(6, 20, 0)), tooth(10, leaning(3, 10, 0)), 'true')!;
		expect(laid.areas.onlyB).toBeCloseTo(0, 1);
		expect(laid.areas.both).toBeCloseTo(30, 1);
		expect(laid.share).toBeCloseTo(0.25, 3);
	});

	it('at equal scale the same two are one', () => {
		const laid = layOver(tooth(20, leaning(6, 20, 0)), tooth(10, leaning(3, 10, 0)), 'equal')!;
		expect(laid.share).toBeCloseTo(1, 6);
		expect(laid.max[1]).toBeCloseTo(1, 9);
	});

	it('leaves out the root and stands the bases on one line', () => {
		const laid = layOver(tooth(20, leaning(6, 20, 3)), tooth(20, leaning(6, 20, 3)), 'true')!;
		expect(laid.min[1]).toBe(0);
		expect(laid.areas.both).toBeCloseTo(120, 0);
	});

	it('mirrors: two that lean to either side fall together when one is turned round', () => {
		const a = tooth(20, leaning(6, 20, 5));
		const b = tooth(20, leaning(6, 20, -5));
		expect(layOver(a, b, 'true')!.share).toBeLessThan(0.75);
		expect(layOver(a, { ...b, mirrored: true }, 'true')!.share).toBeCloseTo(1, 6);
	});

	it('has nothing to lay where nothing stands above the base', () => {
		expect(layOver(tooth(20, [0, -1, 2, -1, 1, -5]), tooth(20, leaning(6, 20, 0)), 'true')).toBeNull();
	});
});

/** As a scan of it would come in: turned and moved anyhow, with its marks. */
function asFound(
	{ mesh, measures }: DemoShape,
	angles: Vec3,
	move: Vec3,
): Record<'side' | 'front', LaidTooth> {
	const rows = rotation(...angles);
	const place = (p: Vec3): Vec3 =>
		rows.map((row, k) => row[0] * p[0] + row[1] * p[1] + row[2] * p[2] + move[k]) as unknown as Vec3;
	const labial = rows.map((row) => row[2]) as unknown as Vec3;
	const marks = {
		apex: place(measures.apex),
		baseMesial: place(measures.baseMesial),
		baseDistal: place(measures.baseDistal),
		labial,
	};
	const turned = orient(mesh, rows, move);
	const measured = measureCrown(turned, { marks, welded: true });
	if (!measured.ok) throw new Error(measured.problem.code);
	const { mesh: upright, measures: own, labial: side } = turnToToothFrame(turned, measured.value, marks);
	const { axialHeight_mm } = own;
	const drawing = lineDrawing(
		weld(upright),
		{ axialHeight_mm, labial: side },
		{ resolution: 500, depthResolution: 200 },
	);
	return {
		side: { view: drawing.side, axialHeight_mm },
		front: { view: drawing.front, axialHeight_mm },
	};
}

describe('laying over does not depend on how the teeth came in', () => {
	it('gives the same shares whatever the rotation and place of the files', async () => {
		const [one, other] = await demoShapes(2);
		const upright = [one, other].map((shape) => asFound(shape, [0, 0, 0], [0, 0, 0]));
		const turns: [Vec3, Vec3][] = [
			[
				[0.7, -0.4, 2.1],
				[30, -12, 5],
			],
			[
				[-2.6, 1.2, 0.3],
				[-4, 80, 11],
			],
			[
				[3.0, 0.1, -1.5],
				[0.5, -60, 33],
			],
		];
		for (const [angles, move] of turns) {
			const found = asFound(one, angles, move);
			for (const view of ['side', 'front'] as const) {
				for (const scale of ['true', 'equal'] as const) {
					const before = layOver(upright[0][view], upright[1][view], scale)!;
					const after = layOver(found[view], upright[1][view], scale)!;
					expect(Math.abs(after.share - before.share), `${view} ${scale}`).toBeLessThan(0.005);
				}
				// turned anyhow, it still covers itself
				expect(layOver(found[view], upright[0][view], 'true')!.share).toBeGreaterThan(0.99);
			}
		}
	}, 60_000);
});
