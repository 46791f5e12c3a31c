import { describe, expect, it } from 'vitest';
import { DEFAULT_LAMP } from '../../../src/lib/stage/lamp';
import type { MeshPart, MeshShape } from '../../../src/lib/stage/api';
import { ShownParts } from '../../../src/lib/stage/shownParts';
import { pickPart, surfaceOf } from '../../../src/lib/stage/viewSurface';
import { createToothMaterials } from '../../../src/lib/stage/materials';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { box } from '../mesh/shapes';

const cube = (size: number): TriMesh => box(size, size, size);
const shape = (...parts: MeshPart[]): MeshShape => ({
	parts,
	preservation: 'honey',
	bounds: { min: [-20, -20, -20], max: [20, 20, 20] },
	crownHeight_mm: 10,
});
const at = (x: number, y: number, z: number) => [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, x, y, z, 1];
const viewOf = (parts: ShownParts) => ({ loan: null, parts, materials: createToothMaterials() });

describe('shownParts', () => {
	it('keeps the geometry of a part that bends and lets go of one that leaves', () => {
		const parts = new ShownParts(shape({ id: 'old', mesh: cube(4) }, { id: 'young', mesh: cube(2) }));
		const [old, young] = parts.painted.map(({ loaded }) => loaded.full);
		let gone = 0;
		young.addEventListener('dispose', () => gone++);
		parts.update(shape({ id: 'old', mesh: cube(6) }));
		expect(parts.painted).toHaveLength(1);
		expect(parts.painted[0].loaded.full).toBe(old);
		expect(gone).toBe(1);
	});

	it('makes a new geometry when the triangles are others, and frees the old', () => {
		const mesh = cube(4);
		const parts = new ShownParts(shape({ id: 'a', mesh }));
		const before = parts.painted[0].loaded.full;
		let gone = 0;
		before.addEventListener('dispose', () => gone++);
		parts.update(shape({ id: 'a', mesh: { ...mesh, indices: mesh.indices.slice(0, -3) } }));
		expect(parts.painted[0].loaded.full).not.toBe(before);
		expect(gone).toBe(1);
	});

	it('frees every geometry and material at the end', () => {
		const parts = new ShownParts(shape({ id: 'a', mesh: cube(4) }, { id: 'b', mesh: cube(3), hidden: true }));
		let gone = 0;
		for (const { loaded, materials } of parts.painted) {
			loaded.full.addEventListener('dispose', () => gone++);
			materials.full.addEventListener('dispose', () => gone++);
		}
		parts.dispose();
		expect(gone).toBe(2);
		expect(parts.painted).toEqual([]);
	});

	it('leaves out what is hidden or wholly see-through', () => {
		const parts = new ShownParts(
			shape(
				{ id: 'a', mesh: cube(4) },
				{ id: 'b', mesh: cube(4), hidden: true },
				{ id: 'c', mesh: cube(4), opacity: 0 },
			),
		);
		expect(parts.painted.map(({ id }) => id)).toEqual(['a']);
	});

	it('mixes a tint into the palette, once, however often it is updated', () => {
		const tint = { rgb: [255, 255, 255] as const, share: 0.5 };
		const mesh = cube(4);
		const parts = new ShownParts(shape({ id: 'a', mesh, tint }));
		const red = () => parts.painted[0].materials.full.uniforms.palette.value[0].x as number;
		const first = red();
		parts.update(shape({ id: 'a', mesh, tint }));
		expect(red()).toBe(first);
		parts.update(shape({ id: 'a', mesh }));
		expect(red()).toBeLessThan(first);
	});

	it('lights see-through parts without making them solid again', () => {
		const parts = new ShownParts(shape({ id: 'a', mesh: cube(4), opacity: 0.4 }));
		const [{ materials }] = parts.painted;
		materials.illuminate(DEFAULT_LAMP, null);
		expect(materials.full.uniforms.opacity.value).toBe(0.4);
		expect(materials.light.transparent).toBe(true);
	});
});

describe('pickPart', () => {
	const towards = { origin: [1, 1.2, 50], direction: [0, 0, -1] } as const;
	const ray = { origin: [...towards.origin], direction: [...towards.direction] } as never;

	it('finds the nearest solid part where it is placed', () => {
		const parts = new ShownParts(
			shape({ id: 'far', mesh: cube(4) }, { id: 'near', mesh: cube(4), place: at(0, 0, 10) }),
		);
		const hit = pickPart(viewOf(parts), ray)!;
		expect(hit.part).toBe('near');
		expect(hit.point[2]).toBeCloseTo(14, 5);
		expect(hit.normal[2]).toBeCloseTo(1, 5);
	});

	it('looks through a see-through part, and takes it when there is nothing else', () => {
		const glass: MeshPart = { id: 'glass', mesh: cube(4), place: at(0, 0, 10), opacity: 0.3 };
		const both = new ShownParts(shape({ id: 'inner', mesh: cube(4) }, glass));
		expect(pickPart(viewOf(both), ray)!.part).toBe('inner');
		expect(pickPart(viewOf(new ShownParts(shape(glass))), ray)!.part).toBe('glass');
	});

	it('answers from the bent surface after an update', () => {
		const parts = new ShownParts(shape({ id: 'a', mesh: cube(4) }));
		const view = viewOf(parts);
		expect(pickPart(view, ray)!.point[2]).toBeCloseTo(4, 5);
		parts.update(shape({ id: 'a', mesh: cube(8) }));
		expect(pickPart(view, ray)!.point[2]).toBeCloseTo(8, 5);
		expect(surfaceOf(view)!.nearest([1, 1, 9]).point[2]).toBeCloseTo(8, 5);
	});
});
