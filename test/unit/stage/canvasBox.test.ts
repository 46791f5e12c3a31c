import { describe, expect, test } from 'vitest';
import { GRID_px, intersection, nextCanvasBox, union } from '../../../src/lib/stage/canvasBox';
import type { Box } from '../../../src/lib/stage/viewport';

const box = (left: number, top: number, right: number, bottom: number): Box => ({ left, top, right, bottom });
const page = box(0, 0, 1920, 1080);
const holds = (outer: Box, inner: Box) =>
	outer.left <= inner.left &&
	outer.top <= inner.top &&
	outer.right >= inner.right &&
	outer.bottom >= inner.bottom;

test('what boxes share and what holds them all', () => {
	expect(intersection(box(0, 0, 10, 10), box(5, -5, 20, 5))).toEqual(box(5, 0, 10, 5));
	expect(intersection(box(0, 0, 10, 10), box(10, 0, 20, 10))).toBeNull();
	expect(union([box(0, 0, 10, 10), box(5, -5, 20, 5)])).toEqual(box(0, -5, 20, 10));
	expect(union([])).toBeNull();
});

describe('the place of the canvas', () => {
	const a = box(205, 190, 410, 805);
	const b = box(1203.5, 220, 1391, 700);

	test('holds every tooth, on the grid, and no more of the page than that', () => {
		const next = nextCanvasBox(null, [a, b], page, true)!;
		expect(holds(next, a) && holds(next, b)).toBe(true);
		for (const edge of Object.values(next)) expect(edge % GRID_px).toBe(0);
		expect(next.right - next.left).toBeLessThan(1391 - 205 + 2 * GRID_px);
	});

	test('never leaves the window', () => {
		expect(nextCanvasBox(null, [box(-500, -500, 5000, 5000)], page, true)).toEqual(page);
		expect(nextCanvasBox(null, [box(-500, -500, -100, -100)], page, true)).toBeNull();
	});

	test('only grows while a tooth turns', () => {
		let now = nextCanvasBox(null, [a], page, true)!;
		for (const width of [100, 160, 90, 200, 50]) {
			const next: Box = nextCanvasBox(now, [box(300 - width, 190, 300 + width, 805)], page, true)!;
			expect(holds(next, now)).toBe(true);
			now = next;
		}
	});

	test('shrinks at rest when much too large, and stays when only a little', () => {
		const wide = nextCanvasBox(null, [a, b], page, true)!;
		const one = nextCanvasBox(wide, [a], page, false)!;
		expect(holds(one, a)).toBe(true);
		expect(one.right - one.left).toBeLessThan(300);
		expect(nextCanvasBox(one, [box(210, 200, 400, 800)], page, false)).toEqual(one);
	});

	test('with nothing to draw it stays where it is, inside a smaller window too', () => {
		expect(nextCanvasBox(box(0, 0, 640, 640), [], page, false)).toEqual(box(0, 0, 640, 640));
		expect(nextCanvasBox(box(0, 0, 640, 640), [], box(0, 0, 320, 320), false)).toEqual(box(0, 0, 320, 320));
	});
});
