import { describe, expect, it } from 'vitest';
import { simplifyLine } from '../../../src/lib/domain/mesh/simplifyLine';

describe('simplifyLine', () => {
	it('keeps the ends of a straight line and nothing between', () => {
		const straight = Array.from({ length: 50 }, (_, i) => [i * 0.3, i * 0.1]).flat();
		expect(simplifyLine(straight, 0.001)).toEqual([0, 0, straight[98], straight[99]]);
	});

	it('never leaves the old line by more than the tolerance, with far fewer points', () => {
		const arc = Array.from({ length: 400 }, (_, i) => {
			const t = (Math.PI * i) / 399;
			return [10 * Math.cos(t), 10 * Math.sin(t)];
		}).flat();
		const few = simplifyLine(arc, 0.02);
		expect(few.length).toBeLessThan(arc.length / 8);
		// the sagitta of each chord of a circle of radius 10
		for (let i = 2; i < few.length; i += 2) {
			const chord = Math.hypot(few[i] - few[i - 2], few[i + 1] - few[i - 1]);
			expect(10 - Math.sqrt(100 - (chord / 2) ** 2)).toBeLessThan(0.0201);
		}
		expect(few.slice(0, 2)).toEqual(arc.slice(0, 2));
		expect(few.slice(-2)).toEqual(arc.slice(-2));
	});

	it('leaves a line of two points alone', () => expect(simplifyLine([1, 2, 3, 4], 9)).toEqual([1, 2, 3, 4]));
});
