import { describe, expect, it } from 'vitest';
import { PHASE_THIRDS, phaseColour, phaseThird } from '../../../../src/lib/ui/replacement/phasePaint';

/** Relative luminance, WCAG 2.2 (threshold 0.04045). */
function luminance(colour: string): number {
	const [r, g, b] = (colour.match(/\d+/g) ?? []).map((part) => {
		const share = Number(part) / 255;
		return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('phasePaint', () => {
	it('darkens all the way, so that the order needs no colours', () => {
		let last = Infinity;
		for (let i = 0; i < 48; i += 1) {
			const now = luminance(phaseColour((i + 0.5) / 48));
			expect(now).toBeLessThan(last);
			last = now;
		}
		expect((luminance(phaseColour(0)) + 0.05) / (luminance(phaseColour(0.999)) + 0.05)).toBeGreaterThan(3);
	});

	it('tells thirds, also at the ends and beyond', () => {
		expect([-0.1, 0, 0.34, 0.67, 0.999, 1.2].map(phaseThird)).toEqual([
			'new',
			'new',
			'working',
			'old',
			'old',
			'old',
		]);
		expect(PHASE_THIRDS).toHaveLength(3);
	});
});
