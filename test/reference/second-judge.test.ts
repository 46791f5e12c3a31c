import Module from 'manifold-3d';
import { beforeAll, describe, expect, it } from 'vitest';
import { planeFrame } from '../../src/lib/domain/mesh/planeFrame';
import { section } from '../../src/lib/domain/mesh/section';
import { sectionMeasure } from '../../src/lib/domain/mesh/sectionMeasure';
import { surfaceArea } from '../../src/lib/domain/mesh/surfaceArea';
import { volume } from '../../src/lib/domain/mesh/volume';
import { weld } from '../../src/lib/domain/mesh/weld';
import type { ToothForm } from '../../src/lib/domain/tooth/form';
import { sculpt } from '../../src/lib/domain/tooth/sculpt';

// manifold-3d, a general library for solids, judges our volume, area and sections on sculpted teeth.

const crown: ToothForm = {
	crownHeight_mm: 40,
	baseLength_mm: 16,
	baseWidth_mm: 12,
	sections: [{ at: 0, shape: 'oval' }],
	taper: 'bullet',
	curve: { distal_deg: 25, lingual_deg: 8, startsAt: 0.2 },
	tipRadius_mm: 0.8,
	carinae: [
		{ where: 'mesial', prominence_mm: 0.6, from: 0 },
		{ where: 'distal', prominence_mm: 0.6, from: 0 },
	],
	root: { state: 'none' },
};
const FORMS: Record<string, ToothForm> = {
	'a two-edged crown': crown,
	'a ridged crown with its root and cavity': {
		...crown,
		carinae: [],
		ridges: { count: 16, height_mm: 0.35, sides: 'all', from: 0.05, to: 0.8, alternating: true },
		root: { state: 'full', length_mm: 30, swelling: 1.15, folded: false },
		pulp: { height_mm: 8, opening: 0.4 },
	},
	'a shed crown, worn, with its pit': {
		...crown,
		root: { state: 'resorbed', length_mm: 6, pitSide: 'lingual', pitDepth_mm: 4 },
		pulp: { height_mm: 5, opening: 0.5 },
		wear: { tipWornTo_mm: 38, facets: [{ side: 'labial', angle_deg: 18, depth_mm: 1, at: 0.75 }] },
	},
};

let wasm: Awaited<ReturnType<typeof Module>>;
beforeAll(async () => {
	wasm = await Module();
	wasm.setup();
});

describe('a second library agrees', () => {
	for (const [name, form] of Object.entries(FORMS))
		it(`on volume, area and sections of ${name}`, () => {
			const made = sculpt(form);
			if (!made.ok) throw new Error(JSON.stringify(made.problem));
			const mesh = weld(made.value.mesh);
			const solid = new wasm.Manifold(
				new wasm.Mesh({ numProp: 3, vertProperties: mesh.positions, triVerts: mesh.indices }),
			);
			expect(solid.status()).toBe('NoError');
			expect(Math.abs(volume(mesh) / solid.volume() - 1)).toBeLessThan(1e-4);
			expect(Math.abs(surfaceArea(mesh) / solid.surfaceArea() - 1)).toBeLessThan(1e-4);
			// it cuts across z, we along the tooth's own y
			const upright = solid.rotate([90, 0, 0]);
			const frame = planeFrame([0, 0, 0], [0, 1, 0], [1, 0, 0]);
			for (const height of [2.3, 10.1, 19.7, 30.3]) {
				const ours = sectionMeasure(section(mesh, frame, height));
				const theirs = upright.slice(height);
				expect(Math.abs((ours?.area ?? 0) / theirs.area() - 1), `at ${height} mm`).toBeLessThan(5e-4);
			}
		});
});
