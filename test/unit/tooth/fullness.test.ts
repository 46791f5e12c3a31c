import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { checkForm } from '../../../src/lib/domain/tooth/checkForm';
import { TAPERS, type ToothForm } from '../../../src/lib/domain/tooth/form';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { fullnessOf, taperSlope, taperWidth, tipProfile } from '../../../src/lib/domain/tooth/tipProfile';

const form = (changes: Partial<ToothForm> = {}): ToothForm => ({
	crownHeight_mm: 30,
	baseLength_mm: 16,
	baseWidth_mm: 14,
	sections: [{ at: 0, shape: 'round' }],
	taper: 'cone',
	curve: { distal_deg: 0, lingual_deg: 0, startsAt: 0 },
	tipRadius_mm: 1,
	carinae: [],
	root: { state: 'none' },
	...changes,
});
const volumeOf = (changes: Partial<ToothForm>): number => {
	const made = sculpt(form(changes), { detail: 'draft' });
	if (!made.ok) throw new Error(made.problem.code);
	return volume(made.value.mesh);
};

describe('fullness', () => {
	it('has every named taper as one of its values, and wins over it', () => {
		expect(TAPERS.map((taper) => fullnessOf({ taper }))).toEqual([-1, 0, 1, 2]);
		expect(fullnessOf({ taper: 'dome', fullness: 0.4 })).toBe(0.4);
		for (const taper of TAPERS)
			for (const x of [0.1, 0.5, 0.9]) {
				const number = fullnessOf({ taper });
				expect(taperWidth(number, x)).toBe(taperWidth(taper, x));
				expect(taperSlope(number, x)).toBe(taperSlope(taper, x));
			}
	});

	it('gives outlines that widen from tip to base and meet their rounded tips with one slope', () => {
		const fullness = fc.double({ min: -1, max: 2, noNaN: true });
		fc.assert(
			fc.property(fullness, fc.double({ min: 0.05, max: 4, noNaN: true }), (full, tip) => {
				let last = 0;
				for (let x = 0.02; x <= 1; x += 0.02) {
					const width = taperWidth(full, x);
					expect(width).toBeGreaterThan(last);
					last = width;
				}
				expect(taperWidth(full, 1)).toBeCloseTo(1, 12);
				const [radius, length] = [8, 30];
				const { arcEnds_mm: u, raise_mm } = tipProfile(full, radius, length, tip);
				if (u === 0) return;
				const x = (u + raise_mm) / (length + raise_mm);
				expect(radius * taperWidth(full, x)).toBeCloseTo(Math.sqrt(u * (2 * tip - u)), 5);
			}),
		);
	});

	it('makes a fuller tooth of more volume, by small steps', () => {
		const volumes = Array.from({ length: 13 }, (_, i) => volumeOf({ fullness: -1 + i / 4 }));
		for (let i = 1; i < volumes.length; i++) {
			expect(volumes[i]).toBeGreaterThan(volumes[i - 1]);
			expect(volumes[i] / volumes[i - 1]).toBeLessThan(1.25);
		}
		expect(volumeOf({ fullness: 1 })).toBeCloseTo(volumeOf({ taper: 'bullet' }), 6);
	});

	it('is refused outside needle and dome', () => {
		expect(checkForm(form({ fullness: 2.5 }))).toMatchObject({ code: 'out-of-range', path: 'fullness' });
		expect(checkForm(form({ fullness: 0.7 }))).toBeNull();
	});
});

describe('a section on its way to another shape', () => {
	const towards = (share: number) =>
		volumeOf({ sections: [{ at: 0, shape: 'round', towards: { shape: 'blade', share } }] });

	it('loses volume by degrees from ellipse to lens', () => {
		const volumes = [0, 0.25, 0.5, 0.75, 1].map(towards);
		for (let i = 1; i < volumes.length; i++) expect(volumes[i]).toBeLessThan(volumes[i - 1]);
		expect(volumes[0]).toBeCloseTo(volumeOf({}), 6);
		// a named lens has its columns closer to its ends
		expect(volumes[4] / volumeOf({ sections: [{ at: 0, shape: 'blade' }] })).toBeCloseTo(1, 2);
	});

	it('is refused beyond the other shape', () => {
		const sections: ToothForm['sections'] = [
			{ at: 0, shape: 'round', towards: { shape: 'blade', share: 1.2 } },
		];
		expect(checkForm(form({ sections }))).toMatchObject({ path: 'sections[0].towards.share' });
	});
});
