import type { ComparedTooth, FormFacts } from '../../../src/lib/domain/compare/traits';
import type { CrownMeasures } from '../../../src/lib/domain/measure/crownMeasures';

/** A round cone 20 mm high and 10 mm wide with two cutting edges, unworn, as a scan whose sides are known. */
const MEASURES: CrownMeasures = {
	triangles: 1000,
	vertices: 502,
	components: 1,
	watertight: true,
	surfaceArea_mm2: 400,
	volume_mm3: 520,
	apex: [0, 20, 0],
	baseMesial: [-5, 0, 0],
	baseDistal: [5, 0, 0],
	axialHeight_mm: 20,
	crownHeight_mm: 20,
	apicalLength_mm: 20,
	crownBaseLength_mm: 10,
	crownBaseWidth_mm: 10,
	crownBaseRatio: 1,
	crownHeightRatio: 2,
	midCrownLength_mm: 5,
	midCrownWidth_mm: 5,
	crownAngle_deg: 75,
	apexAngle_deg: 30,
	tipRadius_mm: 0.5,
	curvature_deg: 10,
	ridgeCount: 0,
	ridges: [],
	carinaCount: 2,
	carinae: [0, 180].map((angle_deg) => ({ angle_deg, prominence_mm: 0.3, from: 0.1, to: 0.9 })),
	facets: [],
	sections: [0.1, 0.3, 0.5, 0.7, 0.9].map((at) => ({
		at,
		area_mm2: Math.PI * (5 * (1 - at)) ** 2,
		perimeter_mm: 2 * Math.PI * 5 * (1 - at),
		length_mm: 10 * (1 - at),
		width_mm: 10 * (1 - at),
		circularity: 1,
		shape: 'round' as const,
	})),
	warnings: [],
};

export interface SampleChanges extends Partial<Omit<ComparedTooth, 'group' | 'measures' | 'facts'>> {
	group?: string;
	measures?: Partial<CrownMeasures>;
	facts?: Partial<ComparedTooth['facts']>;
}

export function sampleTooth({ group = 'a', measures, facts, ...changes }: SampleChanges = {}): ComparedTooth {
	return {
		id: 'tooth',
		part: 'crown',
		features: [],
		...changes,
		group: { id: group },
		measures: { ...MEASURES, ...measures },
		facts: { labial: '+z', regionAreas_mm2: null, form: null, ...facts },
	};
}

/** What a plain form says: two smooth edges, no ridges, round, broken off. */
export const sampleForm = (changes: Partial<FormFacts> = {}): FormFacts => ({
	carinae_deg: [180, 0],
	serrationsPer5mm: 0,
	ridges: null,
	section: 'round',
	root: 'none',
	pitSide: null,
	facetSides: [],
	tipWorn: false,
	...changes,
});

/** Ridges at these angles, the same all the way up. */
export const ridgesAt = (...angles_deg: number[]): Partial<CrownMeasures> => ({
	ridgeCount: angles_deg.length,
	ridges: angles_deg.map((angle_deg) => ({ angle_deg, prominence_mm: 0.2, from: 0.1, to: 0.8 })),
});

/** Cutting edges at these angles. */
export const edgesAt = (...angles_deg: number[]): Partial<CrownMeasures> => ({
	carinaCount: angles_deg.length,
	carinae: angles_deg.map((angle_deg) => ({ angle_deg, prominence_mm: 0.3, from: 0.1, to: 0.9 })),
});
