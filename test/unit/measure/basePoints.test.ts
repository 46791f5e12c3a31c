import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { basePoints } from '../../../src/lib/domain/measure/basePoints';

const ellipse = (a: number, b: number, turned = 0): Float64Array =>
	Float64Array.from(
		Array.from({ length: 360 }, (_, i) => (i * Math.PI) / 180).flatMap((t) => {
			const [x, y] = [a * Math.cos(t), b * Math.sin(t)];
			return [x * Math.cos(turned) - y * Math.sin(turned), x * Math.sin(turned) + y * Math.cos(turned)];
		}),
	);

function found(outline: Float64Array, apex: readonly [number, number]) {
	const codes: string[] = [];
	return { ...basePoints(outline, apex, (code) => codes.push(code)), codes };
}

describe('basePoints', () => {
	it('takes the longer diameter for the length and the lean of the apex for distal (seed 71)', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.2, max: 0.95, noNaN: true }),
				fc.double({ min: -3, max: 3, noNaN: true }),
				fc.double({ min: 0.15, max: 2, noNaN: true }),
				(ratio, turned, lean) => {
					const distal = [Math.cos(turned), Math.sin(turned)] as const;
					// leans to distal, and to one side as well
					const apex = [lean * distal[0] - distal[1], lean * distal[1] + distal[0]] as const;
					const base = found(ellipse(5, 5 * ratio, turned), apex);
					expect(base.codes).toEqual([]);
					expect(base.length).toBeCloseTo(10, 2);
					expect(base.width).toBeCloseTo(10 * ratio, 2);
					expect(base.distal[0] * distal[0] + base.distal[1] * distal[1]).toBeCloseTo(5, 2);
					expect(base.mesial[0] * distal[0] + base.mesial[1] * distal[1]).toBeCloseTo(-5, 2);
				},
			),
			{ seed: 71, numRuns: 100 },
		);
	});

	it('takes the lean for the length of a round base, and says so', () => {
		const base = found(ellipse(5, 5), [3, 3]);
		expect(base.codes).toEqual(['length-width-alike']);
		expect(base.direction[0]).toBeCloseTo(Math.SQRT1_2, 6);
		expect(base.direction[1]).toBeCloseTo(Math.SQRT1_2, 6);
	});

	it('says when nothing leans', () => {
		expect(found(ellipse(5, 3), [0, 1]).codes).toEqual(['mesial-distal-unclear']);
	});

	it('takes the longer diameter, not the larger moment: a base with two edges and a flat lip side', () => {
		// isosceles triangle 10 long and 9 wide: more of its area lies off the middle across than along
		const base = found(Float64Array.of(-5, 0, 5, 0, 0, 9), [2, 3]);
		expect(base.length).toBeCloseTo(10, 9);
		expect(base.width).toBeCloseTo(9, 9);
	});

	it('puts the base point of a flat end in its middle', () => {
		const base = found(Float64Array.of(-5, -2, 5, -2, 5, 2, -5, 2), [1, 0]);
		expect(base.distal[0]).toBeCloseTo(5, 9);
		expect(base.distal[1]).toBeCloseTo(0, 9);
	});
});
