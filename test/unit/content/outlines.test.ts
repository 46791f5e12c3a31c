import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../../src/lib/content/readDrawing';
import type { Drawing } from '../../../src/lib/content/exhibit';

/** Points that a path of M, c, l and z (relative) passes through: all that the demo's outlines use. */
function pointsOf(d: string): [number, number][] {
	const points: [number, number][] = [];
	let [x, y] = [0, 0];
	for (const [, command, rest] of d.matchAll(/([Mclz])([^Mclz]*)/g)) {
		const numbers = (rest.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
		const size = command === 'c' ? 6 : 2;
		for (let i = 0; i + size <= numbers.length; i += size) {
			const [dx, dy] = numbers.slice(i + size - 2, i + size);
			[x, y] = command === 'M' ? [dx, dy] : [x + dx, y + dy];
			points.push([x, y]);
		}
	}
	return points;
}

const outline = (id: string): Drawing => {
	const { drawing } = readDrawing(readFileSync(`content/groups/${id}.svg`, 'utf8'));
	if (!drawing) throw new Error(`content/groups/${id}.svg cannot be read`);
	return drawing;
};
const ids = readdirSync('content/groups').flatMap((name) =>
	name.endsWith('.svg') ? [name.slice(0, -4)] : [],
);

describe('outlines of the demo exhibit', () => {
	it('has one for every group', () => {
		const groups = readdirSync('content/groups').flatMap((n) =>
			n.endsWith('.yaml') ? [n.slice(0, -5)] : [],
		);
		expect(ids).toEqual(groups);
	});

	it.each(ids)('keeps %s on its sheet', (id) => {
		const { viewBox, paths } = outline(id);
		const [left, top, width, height] = viewBox;
		for (const [x, y] of paths.flatMap(pointsOf)) {
			expect(x).toBeGreaterThanOrEqual(left - 0.5);
			expect(x).toBeLessThanOrEqual(left + width + 0.5);
			expect(y).toBeGreaterThanOrEqual(top);
			expect(y).toBeLessThanOrEqual(top + height);
		}
	});

	// a snake lies in bends, and the unknown animal has no length
	it.each(ids.filter((id) => id !== 'python' && id !== 'three-edged'))(
		'draws %s as long as its sheet',
		(id) => {
			const { viewBox, paths } = outline(id);
			const xs = paths.flatMap(pointsOf).map(([x]) => x);
			expect(Math.min(...xs)).toBeLessThan(0.005 * viewBox[2]);
			expect(Math.max(...xs)).toBeGreaterThan(0.995 * viewBox[2]);
		},
	);

	it('draws the python as long along its bends as its sheet is wide', () => {
		const { viewBox, paths } = outline('python');
		const points = pointsOf(paths[0]);
		let round = 0;
		for (let i = 1; i < points.length; i++) {
			round += Math.hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
		}
		// once down one side and once up the other; the ends and the thickness add little
		expect(round / 2 / viewBox[2]).toBeGreaterThan(0.97);
		expect(round / 2 / viewBox[2]).toBeLessThan(1.03);
	});
});
