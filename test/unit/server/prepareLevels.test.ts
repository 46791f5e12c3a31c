import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import type { CrownMeasures } from '../../../src/lib/domain/measure/crownMeasures';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import { bounds } from '../../../src/lib/domain/mesh/bounds';
import { outline } from '../../../src/lib/domain/mesh/outline';
import { surfaceArea } from '../../../src/lib/domain/mesh/surfaceArea';
import { topology } from '../../../src/lib/domain/mesh/topology';
import { REGIONS, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { weld } from '../../../src/lib/domain/mesh/weld';
import { sculpt, type SculptedMarks } from '../../../src/lib/domain/tooth/sculpt';
import type { Vec3 } from '../../../src/lib/domain/vec3';
import { fsReader } from '../../../src/lib/server/fsReader';
import { prepareLevels } from '../../../src/lib/server/prepare/prepareLevels';
import { readGlb } from '../../../src/lib/server/prepare/readGlb';
import type { ShapeLevel } from '../../../src/lib/server/prepare/shapeLevel';
import { writeGlb } from '../../../src/lib/server/prepare/writeGlb';

/** Height of a tooth on the gallery's screen, px. */
const SHOWN_px = 700;
/** From the lip, from the front, and between. */
const VIEWS: readonly Vec3[] = [
	[0, 0, -1],
	[-1, 0, 0],
	[-0.56, 0, -0.83],
];

const { draft } = await loadContent(fsReader(join(import.meta.dirname, '../../../content')));
const models = (draft?.specimens ?? []).flatMap(({ id, shape }) =>
	shape.kind === 'model' ? [{ id, form: shape.form }] : [],
);

/** Area of each region, percent of the whole. */
function shares({ positions, indices }: TriMesh, regionOf: (triangle: number) => number): number[] {
	return REGIONS.map((_, region) => {
		const own = indices.filter((_, k) => regionOf(Math.floor(k / 3)) === region);
		return own.length === 0
			? 0
			: (100 * surfaceArea({ positions, indices: own })) / surfaceArea({ positions, indices });
	});
}

/** Largest distance from a point of one closed line to the other line, mm; x, y pairs. */
function farthest(from: Float64Array, to: Float64Array): number {
	let worst = 0;
	for (let i = 0; i < from.length; i += 2) {
		let best = Infinity;
		for (let j = 0; j < to.length; j += 2) {
			const k = (j + 2) % to.length;
			const [dx, dy] = [to[k] - to[j], to[k + 1] - to[j + 1]];
			const [px, py] = [from[i] - to[j], from[i + 1] - to[j + 1]];
			const along = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy || 1)));
			best = Math.min(best, Math.hypot(px - along * dx, py - along * dy));
		}
		worst = Math.max(worst, best);
	}
	return worst;
}

function measured(mesh: TriMesh, marks: SculptedMarks): CrownMeasures {
	const result = measureCrown(mesh, { marks });
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

const regionOf =
	({ regions, indices }: ShapeLevel) =>
	(triangle: number): number =>
		regions[indices[triangle * 3]];

describe('prepareLevels, on every model of the demo', () => {
	it('has models to try', () => {
		expect(models.length).toBeGreaterThan(5);
	});

	it.each(models)('$id: closed, true to measures and regions, no jump between levels', async ({ form }) => {
		const sculpted = sculpt(form);
		if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
		const { mesh, marks } = sculpted.value;
		const glb = await writeGlb(await prepareLevels(mesh));
		const levels = [await readGlb(glb, 0), await readGlb(glb, 1)];
		const [full, light] = levels.map((level) => weld(level));

		// no cracks: with copies at one place made one, every edge has two sides
		for (const welded of [full, light]) expect(topology(welded).watertight).toBe(true);
		// the light level is worth its name
		expect(light.indices.length / 3).toBeLessThan(0.4 * (mesh.indices.length / 3));

		const [is, was] = [measured(full, marks), measured(mesh, marks)];
		for (const key of ['crownHeight_mm', 'crownBaseLength_mm', 'crownBaseWidth_mm'] as const)
			expect(Math.abs(is[key] / was[key] - 1)).toBeLessThan(0.005);
		const [box, wasBox] = [bounds(full), bounds(mesh)];
		for (const axis of [0, 1, 2]) {
			const limit = 0.005 * (wasBox.max[axis] - wasBox.min[axis]);
			expect(Math.abs(box.min[axis] - wasBox.min[axis])).toBeLessThan(limit);
			expect(Math.abs(box.max[axis] - wasBox.max[axis])).toBeLessThan(limit);
		}

		const wasShares = shares(mesh, (triangle) => mesh.regions![triangle]);
		for (const level of levels) {
			shares(level, regionOf(level)).forEach((share, region) =>
				expect(Math.abs(share - wasShares[region])).toBeLessThan(3),
			);
		}

		const px_mm = (box.max[1] - box.min[1]) / SHOWN_px;
		for (const view of VIEWS) {
			const [a, b] = [full, light].map((level) => outline(level, view, [0, 1, 0], { resolution: 1400 })[0]);
			expect(Math.max(farthest(a.points, b.points), farthest(b.points, a.points))).toBeLessThan(px_mm);
			expect(Math.abs(a.area / b.area - 1)).toBeLessThan(0.01);
		}
	});
});
