import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EYE_radii, frustum, viewRect } from '../../../src/lib/stage/viewport';

const canvas = { left: 100, top: 50, right: 1100, bottom: 650 };
const middle = { x: 500, y: 300 };

describe('the rectangle of a view on the canvas', () => {
	test('whole pixels, counted from the bottom, for a canvas of two pixels per CSS px', () => {
		const rect = viewRect({ left: 300, top: 150, right: 700, bottom: 450 }, middle, canvas, 2000, 1200);
		expect(rect).toEqual({
			x: 400,
			y: 1200 - 800,
			width: 800,
			height: 600,
			lens: { left: -200, right: 200, top: 150, bottom: -150 },
		});
	});

	test('what hangs over the edge is cut off; what lies outside is not drawn', () => {
		const rect = viewRect({ left: 0, top: 0, right: 300, bottom: 150 }, middle, canvas, 1000, 600);
		expect(rect).toMatchObject({ x: 0, y: 500, width: 200, height: 100 });
		expect(viewRect({ left: 1200, top: 0, right: 1300, bottom: 150 }, middle, canvas, 1000, 600)).toBeNull();
		expect(viewRect({ left: 500, top: 100, right: 500, bottom: 150 }, middle, canvas, 1000, 600)).toBeNull();
	});

	test('the lens makes the picture the same whatever the rounding: a CSS px is a CSS px at any render scale', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.2, max: 2, noNaN: true }),
				fc.double({ min: 110, max: 480, noNaN: true }),
				(scale, left) => {
					const box = { left, top: 133.3, right: left + 511.7, bottom: 590.1 };
					const [w, h] = [Math.round(1000 * scale), Math.round(600 * scale)];
					const rect = viewRect(box, middle, canvas, w, h)!;
					expect(rect.width / (rect.lens.right - rect.lens.left)).toBeCloseTo(w / 1000, 8);
					expect(rect.height / (rect.lens.top - rect.lens.bottom)).toBeCloseTo(h / 600, 8);
					// the middle of the view falls on the same CSS px
					expect(100 + (rect.x / w) * 1000 - rect.lens.left).toBeCloseTo(middle.x, 8);
				},
			),
			{ seed: 13 },
		);
	});
});

describe('the lens', () => {
	const lens = { left: -200, right: 200, top: 150, bottom: -150 };
	test('shows the wanted px per mm at the distance of the tooth', () => {
		const f = frustum(lens, 8, 25);
		expect(f.distance).toBe(EYE_radii * 25);
		// similar triangles: width at the tooth = width on the near plane * distance / near
		expect(((f.right - f.left) * f.distance) / f.near).toBeCloseTo(400 / 8, 8);
		expect(((f.top - f.bottom) * f.distance) / f.near).toBeCloseTo(300 / 8, 8);
	});
	test('holds the tooth between its near and far planes at any turn', () => {
		const f = frustum(lens, 8, 25);
		expect(f.near).toBeLessThan(f.distance - 25);
		expect(f.far).toBeGreaterThan(f.distance + 25);
		expect(f.near).toBeGreaterThan(0);
	});
	test('is long: from edge to edge of the tooth size changes by less than a quarter', () => {
		expect((EYE_radii + 1) / (EYE_radii - 1)).toBeLessThan(1.26);
	});
});
