import { describe, expect, it } from 'vitest';
import { lineDrawing, type DrawnView, type LineDrawing } from '../../../src/lib/domain/mesh/lineDrawing';
import { polygonArea } from '../../../src/lib/domain/mesh/polygonArea';
import { REGIONS, regionIndex, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { box, ellipticCone, placed, rotation, sphere, stack } from './shapes';
import { orient } from '../../../src/lib/domain/mesh/orient';

const VIEWS = ['side', 'front', 'tip'] as const;
const area = (points: number[]): number => Math.abs(polygonArea(Float64Array.from(points)));
const off = (value: number, truth: number): number => Math.abs(value / truth - 1);
const outlineOf = (view: DrawnView): number[] => {
	const outer = view.lines.filter(({ kind }) => kind === 'outline').map(({ points }) => points);
	return outer.sort((a, b) => area(b) - area(a))[0];
};
const width = ({ min, max }: { min: number[]; max: number[] }): number => max[0] - min[0];
const height = ({ min, max }: { min: number[]; max: number[] }): number => max[1] - min[1];
const linesOf = (view: DrawnView, kind: string) => view.lines.filter((line) => line.kind === kind);

/** Elliptic cylinder on the plane y = 0 with flat ends. */
const cylinder = (a: number, b: number, tall: number, around = 240): TriMesh =>
	stack(
		Array.from({ length: 21 }, (_, i) => ({ centre: [0, (tall * i) / 20, 0] as const, a, b })),
		around,
		[0, 0, 0],
		[0, tall, 0],
	);

const form: ToothForm = {
	crownHeight_mm: 30,
	baseLength_mm: 16,
	baseWidth_mm: 10,
	sections: [{ at: 0, shape: 'oval' }],
	taper: 'bullet',
	curve: { distal_deg: 20, lingual_deg: 0, startsAt: 0.2 },
	tipRadius_mm: 0.8,
	carinae: [
		{ where: 'mesial', prominence_mm: 0.6, from: 0 },
		{ where: 'distal', prominence_mm: 0.6, from: 0 },
	],
	root: { state: 'full', length_mm: 12, swelling: 1.1, folded: false },
	wear: { facets: [{ side: 'labial', angle_deg: 25, depth_mm: 1.2, at: 0.6 }] },
};
function toothOf(change: Partial<ToothForm> = {}): TriMesh {
	const made = sculpt({ ...form, ...change });
	if (!made.ok) throw new Error(JSON.stringify(made.problem));
	return made.value.mesh;
}

describe('lineDrawing against closed formulas', () => {
	it('a sphere is a circle of its radius from every side', () => {
		const drawing = lineDrawing(sphere(7, 256, 128), { axialHeight_mm: 7 });
		for (const name of VIEWS) {
			const circle = outlineOf(drawing[name]);
			expect(off(area(circle), Math.PI * 49)).toBeLessThan(0.005);
			for (let i = 0; i < circle.length; i += 2)
				expect(off(Math.hypot(circle[i], circle[i + 1]), 7)).toBeLessThan(0.005);
			// nothing on it but its outline: no fold, no corner
			expect(drawing[name].lines).toHaveLength(1);
		}
	});

	it('a cone is its triangle from the side and its base from the tip', () => {
		const [a, b, tall] = [10, 6, 40];
		const drawing = lineDrawing(ellipticCone(a, b, [0, tall, 0]), { axialHeight_mm: tall });
		expect(off(area(outlineOf(drawing.side)), a * tall)).toBeLessThan(0.005);
		expect(off(area(outlineOf(drawing.front)), b * tall)).toBeLessThan(0.005);
		expect(off(area(outlineOf(drawing.tip)), Math.PI * a * b)).toBeLessThan(0.005);
		// half way up an elliptic cone both half axes are half as long
		expect(off(area(drawing.section!.loops[0]), Math.PI * (a / 2) * (b / 2))).toBeLessThan(0.005);
		expect(drawing.section!.at).toBe(tall / 2);
	});

	it('the section of an elliptic cylinder is pi a b, as long and wide as the cylinder', () => {
		const drawing = lineDrawing(cylinder(9, 4, 20), { axialHeight_mm: 20 });
		const { loops, side, front, min, max } = drawing.section!;
		expect(loops).toHaveLength(1);
		expect(off(area(loops[0]), Math.PI * 9 * 4)).toBeLessThan(0.005);
		expect([side[0], side[1], front[0], front[1]].map(Math.round)).toEqual([-9, 9, -4, 4]);
		expect([min[0], max[0], min[1], max[1]].map(Math.round)).toEqual([-9, 9, -4, 4]);
		expect(off(area(outlineOf(drawing.side)), 18 * 20)).toBeLessThan(0.005);
	});

	it('a tube shows its bore as a hole of the cut face', () => {
		const outer = cylinder(9, 9, 20);
		const bore = cylinder(5, 5, 18);
		const inward = bore.indices.slice();
		for (let k = 0; k < inward.length; k += 3) [inward[k], inward[k + 1]] = [inward[k + 1], inward[k]];
		const hollow: TriMesh = {
			positions: Float32Array.of(
				...outer.positions,
				...bore.positions.map((x, i) => (i % 3 === 1 ? x + 1 : x)),
			),
			indices: Uint32Array.of(...outer.indices, ...inward.map((v) => v + outer.positions.length / 3)),
		};
		const { loops } = lineDrawing(hollow, { axialHeight_mm: 20 }).section!;
		expect(loops).toHaveLength(2);
		expect(off(area(loops[0]), Math.PI * 81)).toBeLessThan(0.005);
		expect(off(area(loops[1]), Math.PI * 25)).toBeLessThan(0.005);
	});
});

describe('lineDrawing', () => {
	const mesh = toothOf();
	const drawing = lineDrawing(mesh, { axialHeight_mm: 30 });

	it('its views agree on every dimension that they share', () => {
		for (const one of [drawing, lineDrawing(ellipticCone(10, 6, [5, 40, -3]), { axialHeight_mm: 40 })]) {
			const tall = height(one.side);
			expect(Math.abs(height(one.front) - tall)).toBeLessThan(tall * 0.003);
			expect(Math.abs(width(one.side) - width(one.tip))).toBeLessThan(tall * 0.003);
			expect(Math.abs(width(one.front) - height(one.tip))).toBeLessThan(tall * 0.003);
			expect(one.side.min[0]).toBeCloseTo(one.tip.min[0], 0);
		}
	});

	it('turning the tooth a quarter about its axis makes the front view the side view', () => {
		const turned = lineDrawing(orient(mesh, rotation(Math.PI / 2, 0, 0)), { axialHeight_mm: 30 });
		const mirrored = [turned.side, turned.front].map((view) => [width(view), height(view)]);
		expect(off(mirrored[0][0], width(drawing.front))).toBeLessThan(0.005);
		expect(off(mirrored[1][0], width(drawing.side))).toBeLessThan(0.005);
		expect(off(area(outlineOf(turned.side)), area(outlineOf(drawing.front)))).toBeLessThan(0.003);
		expect(off(area(outlineOf(turned.front)), area(outlineOf(drawing.side)))).toBeLessThan(0.003);
		expect(off(area(outlineOf(turned.tip)), area(outlineOf(drawing.tip)))).toBeLessThan(0.003);
		expect(off(width(turned.section!), height(drawing.section!))).toBeLessThan(0.005);
	});

	it('shows distal to the right, and on a tooth of the other side to the left, seen from its own labial face', () => {
		// the tip leans distally, to +x
		const top = (points: number[]): number => {
			let best = 0;
			for (let i = 0; i < points.length; i += 2) if (points[i + 1] > points[best + 1]) best = i;
			return points[best];
		};
		expect(top(outlineOf(drawing.side))).toBeGreaterThan(1);
		const other = lineDrawing(mesh, { axialHeight_mm: 30, labial: '-z' });
		expect(top(outlineOf(other.side))).toBeCloseTo(-top(outlineOf(drawing.side)), 1);
		expect(other.section!.side.map((x) => -x).sort((a, b) => a - b)).toEqual(drawing.section!.side);
		expect(other.section!.front).toEqual(drawing.section!.front);
		// the worn face is labial: seen from there, and not from behind
		expect(linesOf(drawing.side, 'facet').length).toBeGreaterThan(0);
		expect(linesOf(other.side, 'facet')).toEqual([]);
	});

	it('draws the border of the enamel once across the tooth, at the height of the crown base', () => {
		for (const name of ['side', 'front'] as const) {
			const [base, ...more] = linesOf(drawing[name], 'base');
			expect(more).toEqual([]);
			for (let i = 1; i < base.points.length; i += 2) expect(Math.abs(base.points[i])).toBeLessThan(0.15);
			const xs = base.points.filter((_, i) => i % 2 === 0);
			const across = name === 'side' ? 16 : 10;
			expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(across * 0.9);
		}
	});

	it('draws a cutting edge down the middle of the front and from end to end over the tip', () => {
		const [edge] = linesOf(drawing.front, 'edge');
		const [xs, ys] = [0, 1].map((k) => edge.points.filter((_, i) => i % 2 === k));
		for (const x of xs) expect(Math.abs(x)).toBeLessThan(0.4);
		expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(20);
		const over = linesOf(drawing.tip, 'edge').flatMap(({ points }) => points.filter((_, i) => i % 2 === 0));
		expect(Math.min(...over)).toBeLessThan(-7);
		// from the side an edge is the outline itself
		expect(linesOf(drawing.side, 'edge')).toEqual([]);
	});

	it('draws one line for every ridge that faces the viewer', () => {
		const ridged = toothOf({
			carinae: [],
			wear: undefined,
			curve: { distal_deg: 0, lingual_deg: 0, startsAt: 0.2 },
			ridges: { count: 16, height_mm: 0.3, sides: 'all', from: 0.1, to: 0.7, alternating: false },
		});
		const { side, front } = lineDrawing(ridged, { axialHeight_mm: 30 });
		for (const view of [side, front]) {
			const count = linesOf(view, 'ridge').length;
			// of 16, eight face the viewer; those on the outline are the outline
			expect(count).toBeGreaterThanOrEqual(6);
			expect(count).toBeLessThanOrEqual(8);
		}
	});

	it('a part that stands before another hides its lines', () => {
		// a small upright post in front of a wide plate with a border across it
		const plate = box(20, 20, 1);
		const regions = new Uint8Array(plate.indices.length / 3);
		const post = placed(box(4, 20, 1), [0, 0, 0], 1, [8, 0, 5]);
		const border = stack(
			[0, 10, 10, 20].map((y) => ({ centre: [10, y, 2] as const, a: 9, b: 0.5 })),
			48,
			[10, 0, 2],
			[10, 20, 2],
		);
		const banded = new Uint8Array(border.indices.length / 3);
		for (let t = 0; t < banded.length; t++) {
			const ys = [0, 1, 2].map((k) => border.positions[border.indices[t * 3 + k] * 3 + 1]);
			banded[t] = regionIndex(Math.max(...ys) > 10 ? 'enamel' : 'root');
		}
		const join = (parts: TriMesh[]): TriMesh => {
			let from = 0;
			const positions: number[] = [];
			const indices: number[] = [];
			for (const part of parts) {
				positions.push(...part.positions);
				indices.push(...part.indices.map((v) => v + from));
				from += part.positions.length / 3;
			}
			return {
				positions: Float32Array.from(positions),
				indices: Uint32Array.from(indices),
				regions: Uint8Array.of(...regions, ...banded, ...new Uint8Array(12)),
			};
		};
		const seen = linesOf(lineDrawing(join([plate, border, post]), { axialHeight_mm: 20 }).side, 'base');
		const xs = seen.flatMap(({ points }) => points.filter((_, i) => i % 2 === 0));
		expect(Math.min(...xs)).toBeLessThan(2);
		expect(Math.max(...xs)).toBeGreaterThan(18);
		expect(xs.filter((x) => x > 8.3 && x < 11.7)).toEqual([]);
		for (const { points } of seen) expect(points[0] < 8.3 === points[points.length - 2] < 8.3).toBe(true);
	});

	it('dots shade the worn face and the side away from the light, all inside the outline', () => {
		const { dots, min, max } = drawing.side;
		expect(dots.length / 2).toBeGreaterThan(60);
		for (let i = 0; i < dots.length; i += 2) {
			expect(dots[i]).toBeGreaterThan(min[0]);
			expect(dots[i]).toBeLessThan(max[0]);
			expect(dots[i + 1]).toBeGreaterThan(min[1]);
			expect(dots[i + 1]).toBeLessThan(max[1]);
		}
		const root = Array.from({ length: dots.length / 2 }, (_, i) => [dots[i * 2], dots[i * 2 + 1]]).filter(
			([, y]) => y < -1,
		);
		const right = root.filter(([x]) => x > 0).length;
		expect(right).toBeGreaterThan(2 * (root.length - right));
		const plain = lineDrawing(
			{ ...mesh, regions: mesh.regions!.map(() => REGIONS.indexOf('enamel')) },
			{ axialHeight_mm: 30 },
		);
		expect(plain.side.dots.length).toBeLessThan(dots.length);
	});

	it('is plain data, the same every time, and small enough to be fetched', () => {
		const json = JSON.stringify(drawing);
		expect(JSON.parse(json)).toEqual(drawing);
		expect(JSON.stringify(lineDrawing(mesh, { axialHeight_mm: 30 }))).toBe(json);
		expect(json.length).toBeLessThan(30_000);
	});

	it('draws nothing of nothing, and no section where the plane misses', () => {
		const empty: TriMesh = { positions: new Float32Array(0), indices: new Uint32Array(0) };
		const none: LineDrawing = lineDrawing(empty, { axialHeight_mm: 10 });
		for (const name of VIEWS) expect(none[name]).toEqual({ min: [0, 0], max: [0, 0], lines: [], dots: [] });
		expect(none.section).toBeNull();
		expect(lineDrawing(box(1, 1, 1), { axialHeight_mm: 10 }).section).toBeNull();
	});
});
