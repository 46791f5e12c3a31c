import { expect, test } from 'vitest';
import { regionIndex } from '../../../src/lib/domain/mesh/triMesh';
import { enamelRim, RIM_REACH } from '../../../src/lib/stage/enamelRim';
import { places } from '../../../src/lib/stage/places';

const [enamel, facet, root] = [regionIndex('enamel'), regionIndex('facet'), regionIndex('root')];

/** Vertices on a line, x and region of each; the tooth is 100 high. */
const along = (vertices: readonly (readonly [x: number, region: number])[]) => {
	const all = [...vertices, [0, root] as const];
	const positions = Float32Array.from(all.flatMap(([x], i) => [x, i === all.length - 1 ? 100 : 0, 0]));
	const surface = new Uint8Array(all.length * 4);
	all.forEach(([, region], i) => (surface[i * 4 + 2] = region));
	enamelRim(positions, surface, places(positions));
	return vertices.map((_, i) => surface[i * 4 + 3]);
};
const reach = RIM_REACH * 100;

test('rises from 0 at the edge of a facet to 255 at its reach', () => {
	const found = along([
		[0, facet],
		[0, enamel],
		[reach / 2, enamel],
		[reach * 0.999, enamel],
		[reach * 3, enamel],
	]);
	expect(found).toEqual([255, 0, Math.round(255 / 2), 255, 255]);
});

test('the root is no such edge', () => {
	const found = along([
		[0, root],
		[0, enamel],
		[reach / 2, enamel],
	]);
	expect(found).toEqual([255, 255, 255]);
});

test('a facet that touches no enamel makes none', () => {
	const found = along([
		[0, facet],
		[reach / 4, enamel],
	]);
	expect(found).toEqual([255, 255]);
});
