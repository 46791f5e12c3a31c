import { expect, test } from 'vitest';
import { regionIndex } from '../../../src/lib/domain/mesh/triMesh';
import { crests } from '../../../src/lib/stage/crests';
import { places } from '../../../src/lib/stage/places';

const [enamel, carina, root] = [regionIndex('enamel'), regionIndex('carina'), regionIndex('root')];

/** A strip of `columns` quads, each of two triangles with vertices of their own; `region` per column. */
const strip = (columns: number, region: (column: number) => number) => {
	const positions: number[] = [];
	const regions: number[] = [];
	for (let i = 0; i < columns; i++) {
		positions.push(i, 0, 0, i + 1, 0, 0, i + 1, 1, 0, i, 0, 0, i + 1, 1, 0, i, 1, 0);
		for (let k = 0; k < 6; k++) regions.push(region(i));
	}
	const indices = regions.map((_, i) => i);
	const share = crests(regions, places(positions), indices);
	return (column: number, corner = 0) => share[(column * 6 + corner) * 2];
};

test('far inside a carina all is carina, far from it nothing', () => {
	const share = strip(30, (i) => (i >= 10 && i < 20 ? carina : enamel));
	expect(share(15)).toBe(255);
	expect(share(2)).toBe(0);
	expect(share(28)).toBe(0);
});

test('the border is a slope, and copies at one place agree', () => {
	const share = strip(30, (i) => (i >= 15 ? carina : enamel));
	let before = share(5);
	for (let i = 6; i < 25; i++) {
		expect(share(i)).toBeGreaterThanOrEqual(before);
		expect(share(i) - before).toBeLessThan(110);
		before = share(i);
	}
	// right corner of one column, left corner of the next
	for (let i = 5; i < 25; i++) expect(share(i, 1)).toBe(share(i + 1, 0));
});

test('does not run over into the root', () => {
	const share = strip(30, (i) => (i >= 15 ? root : carina));
	expect(share(14)).toBe(255);
	expect(share(15)).toBe(0);
});

test('a surface without crests has none', () => {
	const share = strip(4, () => enamel);
	for (let i = 0; i < 4; i++) expect(share(i)).toBe(0);
});
