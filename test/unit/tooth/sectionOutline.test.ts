import { describe, expect, it } from 'vitest';
import { SECTION_SHAPES, type SectionShape } from '../../../src/lib/domain/tooth/form';
import { sectionOutline } from '../../../src/lib/domain/tooth/sectionOutline';

const outline = (shape: SectionShape, n = 3600) =>
	Array.from({ length: n }, (_, i) => sectionOutline(shape, (2 * Math.PI * i) / n));
const area = (points: (readonly [number, number])[]): number =>
	points.reduce((sum, [x, z], i) => {
		const [u, w] = points[(i + 1) % points.length];
		return sum + (x * w - u * z) / 2;
	}, 0);

describe('sectionOutline', () => {
	it.each(SECTION_SHAPES)('%s touches the box on all four sides and runs round once', (shape) => {
		const points = outline(shape);
		const [xs, zs] = [points.map((p) => p[0]), points.map((p) => p[1])];
		expect(Math.max(...xs)).toBeCloseTo(1, 4);
		expect(Math.min(...xs)).toBeCloseTo(-1, 4);
		expect(Math.max(...zs)).toBeCloseTo(1, 4);
		expect(Math.min(...zs)).toBeCloseTo(-1, 4);
		expect(area(points)).toBeGreaterThan(1.5);
		// mesial and distal mirror each other
		for (const angle of [0.3, 1.1, 4, 5.5]) {
			const [x, z] = sectionOutline(shape, angle);
			const [mx, mz] = sectionOutline(shape, Math.PI - angle);
			expect(mx).toBeCloseTo(-x, 6);
			expect(mz).toBeCloseTo(z, 6);
		}
	});

	// areas of a circle (pi) and of two parabolic segments (2 * 2/3 * 2): common practice, no source
	it('round has the area of a circle, blade that of two parabolic segments', () => {
		expect(area(outline('round'))).toBeCloseTo(Math.PI, 4);
		expect(area(outline('blade'))).toBeCloseTo(8 / 3, 4);
	});

	it('oval is a little fuller than the circle', () => {
		expect(area(outline('oval'))).toBeGreaterThan(Math.PI);
		expect(area(outline('oval'))).toBeLessThan(3.5);
	});

	it('triangular has edges at 0, 180 and 270 degrees and a flat labial face', () => {
		const turnAt = (angle: number): number => {
			const d = 0.02;
			const [a, b, c] = [angle - d, angle, angle + d].map((x) => sectionOutline('triangular', x, true));
			const first = Math.atan2(b[1] - a[1], b[0] - a[0]);
			return Math.abs(
				((Math.atan2(c[1] - b[1], c[0] - b[0]) - first + 3 * Math.PI) % (2 * Math.PI)) - Math.PI,
			);
		};
		for (const edge of [0, Math.PI, 1.5 * Math.PI])
			expect(turnAt(edge)).toBeGreaterThan(8 * turnAt(edge + 0.5));
		const face = [1.1, 1.4, 1.57, 1.8, 2].map((angle) => sectionOutline('triangular', angle, true)[1]);
		expect(Math.max(...face) - Math.min(...face)).toBeLessThan(0.02);
	});

	it('flat-sided is flat labially and round lingually', () => {
		const face = [1.2, 1.4, 1.57, 1.8].map((angle) => sectionOutline('flat-sided', angle)[1]);
		expect(Math.max(...face) - Math.min(...face)).toBeLessThan(0.02);
		const back = [4.3, 4.71, 5.1].map((angle) => sectionOutline('flat-sided', angle)[1]);
		expect(Math.max(...back) - Math.min(...back)).toBeGreaterThan(0.05);
	});
});
