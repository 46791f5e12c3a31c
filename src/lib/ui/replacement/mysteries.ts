import type { BaseSigns, Verdict } from '../../domain/replacement/judgeBase';
import type { ToothForm } from '../../domain/tooth/form';
import type { Preservation } from '../../content/exhibit';
import type { Pose } from '../../stage/api';

/** A tooth whose lower end is to be judged. Made here to general proportions; none is a specimen. */
export interface Mystery {
	id: 'a' | 'b' | 'c';
	form: ToothForm;
	preservation: Preservation;
	signs: BaseSigns;
	verdict: Verdict;
}

export const SIGN_PLACES = ['root', 'base', 'tip'] as const;
export type SignPlace = (typeof SIGN_PLACES)[number];

/** From where each sign is seen best. */
export const SIGN_POSES: Readonly<Record<SignPlace, Partial<Pose>>> = {
	root: { yaw_deg: 0, tilt_deg: 0, zoom: 1 },
	base: { yaw_deg: 200, tilt_deg: -62, zoom: 1.35 },
	tip: { yaw_deg: 40, tilt_deg: 48, zoom: 1.35 },
};

const CROWN = {
	sections: [{ at: 0, shape: 'oval' }],
	taper: 'bullet',
	curve: { distal_deg: 16, lingual_deg: 10, startsAt: 0.2 },
	tipRadius_mm: 0.8,
} as const;
const edges = (prominence_mm: number): ToothForm['carinae'] => [
	{ where: 'mesial', prominence_mm, from: 0.1 },
	{ where: 'distal', prominence_mm, from: 0.1 },
];

export const MYSTERIES: readonly Mystery[] = [
	{
		id: 'a',
		preservation: 'black',
		signs: { root: 'none', base: 'clean-break', tip: 'worn' },
		verdict: 'broken-crown',
		form: {
			...CROWN,
			sections: [...CROWN.sections],
			crownHeight_mm: 26,
			baseLength_mm: 12,
			baseWidth_mm: 10.5,
			carinae: edges(0.35),
			root: { state: 'none' },
			pulp: { height_mm: 5, opening: 0.3 },
			wear: { tipWornTo_mm: 24, facets: [{ side: 'labial', angle_deg: 20, depth_mm: 0.9, at: 0.78 }] },
		},
	},
	{
		id: 'b',
		preservation: 'honey',
		signs: { root: 'stub', base: 'bays', tip: 'worn' },
		verdict: 'shed',
		form: {
			...CROWN,
			sections: [...CROWN.sections],
			crownHeight_mm: 25,
			baseLength_mm: 13,
			baseWidth_mm: 11.5,
			carinae: edges(0.4),
			root: { state: 'resorbed', length_mm: 5.5, pitSide: 'lingual', pitDepth_mm: 4.5 },
			pulp: { height_mm: 6, opening: 0.62 },
			wear: { tipWornTo_mm: 21.5, facets: [{ side: 'labial', angle_deg: 20, depth_mm: 1.2, at: 0.72 }] },
		},
	},
	{
		id: 'c',
		preservation: 'tan',
		signs: { root: 'full', base: 'whole', tip: 'worn' },
		verdict: 'torn-out',
		form: {
			...CROWN,
			sections: [...CROWN.sections],
			crownHeight_mm: 22,
			baseLength_mm: 12,
			baseWidth_mm: 11,
			carinae: edges(0.35),
			root: { state: 'full', length_mm: 30, swelling: 1.18, folded: false },
			pulp: { height_mm: 2, opening: 0.4 },
			wear: { tipWornTo_mm: 20.2 },
		},
	},
];
