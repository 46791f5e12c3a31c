import { describe, expect, it } from 'vitest';
import { nearestInTriangle } from '../../../src/lib/ui/feeding/nearestInTriangle';

const H = Math.sqrt(3) / 2;
const close = (found: readonly [number, number], wanted: readonly [number, number]) => {
	expect(found[0]).toBeCloseTo(wanted[0], 10);
	expect(found[1]).toBeCloseTo(wanted[1], 10);
};

describe('nearestInTriangle', () => {
	it('leaves alone what lies inside', () => {
		close(nearestInTriangle(0.5, 0.3), [0.5, 0.3]);
		close(nearestInTriangle(0.1, 0.05), [0.1, 0.05]);
	});
	it('drops straight onto the nearest side', () => {
		close(nearestInTriangle(0.3, -0.4), [0.3, 0]);
		// square to the left side through its middle
		close(nearestInTriangle(0.25 - 0.2 * H, H / 2 + 0.1), [0.25, H / 2]);
		close(nearestInTriangle(0.75 + 0.2 * H, H / 2 + 0.1), [0.75, H / 2]);
	});
	it('goes to a corner from behind it', () => {
		close(nearestInTriangle(-0.3, -0.2), [0, 0]);
		close(nearestInTriangle(1.4, -0.1), [1, 0]);
		close(nearestInTriangle(0.5, 2), [0.5, H]);
	});
});
