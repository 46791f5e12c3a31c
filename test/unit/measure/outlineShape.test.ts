import { describe, expect, it } from 'vitest';
import { outlineShape } from '../../../src/lib/domain/measure/outlineShape';
import { polarOutline } from '../../../src/lib/domain/measure/polarOutline';
import { ellipse, fluted, halfRound, lens, polygon, squaredEllipse, type Outline } from './lineShapes';

const points = (outline: Outline, count = 200): Float64Array =>
	Float64Array.from(Array.from({ length: count }, (_, i) => outline((2 * Math.PI * i) / count, 0.5)).flat());
const kind = (outline: Outline, count?: number): string | null =>
	outlineShape(polarOutline(points(outline, count))!);

describe('outlineShape', () => {
	it.each([
		['circle', ellipse(1), 'round'],
		['nearly a circle', ellipse(0.93), 'round'],
		['ellipse', ellipse(0.8), 'oval'],
		['flat ellipse', ellipse(0.2), 'oval'],
		['superellipse', squaredEllipse(0.5), 'oval'],
		['lens', lens(0.5), 'blade'],
		['flat lens', lens(0.2), 'blade'],
		['triangle', polygon(3), 'triangular'],
		['flat triangle', polygon(3, 0.5), 'triangular'],
		['square', polygon(4), 'other'],
		['half-round with a flat face', halfRound, 'other'],
		['circle with 18 ridges', fluted(ellipse(1), 18, 0.1), 'round'],
		['lens with 24 ridges', fluted(lens(0.5), 24, 0.05), 'blade'],
	] as const)('%s', (_, outline, expected) => {
		expect(kind(outline)).toBe(expected);
	});

	it('cannot tell from a few points', () => {
		expect(kind(ellipse(1), 12)).toBeNull();
	});
});

describe('polarOutline', () => {
	it('makes a circle of radius 1 of any ellipse, turned and moved', () => {
		const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
		const flat = points((a) => {
			const [x, y] = [6 * Math.cos(a), 2 * Math.sin(a)];
			return [30 + c * x - s * y, -20 + s * x + c * y];
		}, 4000);
		const outline = polarOutline(flat)!;
		expect(Math.max(...outline.logRadius.map(Math.abs))).toBeLessThan(1e-4);
		expect(outline.meanRadius_mm).toBeCloseTo(Math.sqrt(12), 4);
		expect(outline.centre[0]).toBeCloseTo(30, 6);
	});

	it('is nothing for points on a line', () => {
		expect(polarOutline(Float64Array.of(0, 0, 1, 1, 2, 2))).toBeNull();
	});
});
