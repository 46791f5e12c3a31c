import { describe, expect, it } from 'vitest';
import { crownSurface } from '../../../src/lib/domain/compare/crownSurface';
import { sampleTooth } from './sampleTooth';

describe('crownSurface', () => {
	it('integrates the perimeters of the sections over the height', () => {
		const { measures, facts } = sampleTooth();
		// perimeters 10 pi (1 - at) at 0.1, 0.3 .. 0.9, height 20: upright 0.9 * 0.1 below, straight between: (1-0.1)^2/2
		// down to (1-0.9)^2/2, a cone above: 0.1 * 0.1 / 2; 10 pi * 20 * (0.09 + 0.405 - 0.005 + 0.005)
		expect(crownSurface(measures, facts)).toBeCloseTo(200 * Math.PI * 0.495, 9);
		// a tall cone's wall is pi r l = pi * 5 * sqrt(20^2 + 5^2) = 323.8: within 5 %
		expect(Math.abs((crownSurface(measures, facts) ?? 0) / 323.8 - 1)).toBeLessThan(0.05);
	});

	it('adds up the outer regions where they are known', () => {
		const areas = { enamel: 1, carina: 2, ridge: 4, facet: 8, dentine: 16, root: 32, pit: 64, pulp: 128 };
		const { measures, facts } = sampleTooth({ facts: { regionAreas_mm2: areas } });
		expect(crownSurface(measures, facts)).toBe(31);
		const none = { ...areas, enamel: 0, carina: 0, ridge: 0, facet: 0, dentine: 0 };
		expect(crownSurface(measures, { ...facts, regionAreas_mm2: none })).toBeNull();
	});

	it('is null without sections', () => {
		const { measures, facts } = sampleTooth({ measures: { sections: [] } });
		expect(crownSurface(measures, facts)).toBeNull();
	});
});
