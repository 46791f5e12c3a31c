/**
 * Where the next tooth grows. inside = it moves into the hollow root of the old tooth (crocodylians, Poole 1961,
 * doi:10.1111/j.1469-7998.1961.tb06083.x); pit = at the inner side of the old root, in a pit eaten into it
 * (mosasaurs, Caldwell 2007, doi:10.1111/j.1096-3642.2007.00280.x; ichthyosaurs, Owen); base = at the inner side of
 * the base of a tooth that stands against the jaw's wall (lizards). Here every successor stands upright: whether some
 * mosasaurs' lay down is disputed, and nothing of it is shown.
 */
export const ARRANGEMENTS = ['inside', 'pit', 'base'] as const;
export type Arrangement = (typeof ARRANGEMENTS)[number];

/** A tooth simple enough to be shown at any moment of its life. Sizes in mm, tooth frame of mesh/triMesh.ts. OUR drawing. */
export interface LifeForm {
	crownHeight_mm: number;
	/** half the mesiodistal length of the crown's base, and half its labiolingual width */
	halfLength_mm: number;
	halfWidth_mm: number;
	/** how the crown narrows: 1 = cone, below 1 = bullet */
	taper: number;
	/** how far the tip leans to the tongue side, mm */
	lean_mm: number;
	rootLength_mm: number;
	/** widest root over the crown's base */
	swelling: number;
	/** replacement period over the length of a life: a half = one successor at a time, a third = two */
	share: number;
	/** the crown is complete at this part of the time below the gum */
	crownUntil: number;
	/** the root is shortened from below from this part of its resorption on; before, only the successor eats into it */
	shrinksFrom: number;
	/** path of the successor's tip: at `below` (0 germ .. 1 about to erupt) it stands at z (- = tongue side) and y, mm */
	path: readonly { below: number; y_mm: number; z_mm: number }[];
}

/** Each is made up to general proportions; none is a measured animal. */
export const LIFE_FORMS: Readonly<Record<Arrangement, LifeForm>> = {
	inside: {
		crownHeight_mm: 20,
		halfLength_mm: 6.5,
		halfWidth_mm: 6,
		taper: 0.82,
		lean_mm: 2.4,
		rootLength_mm: 32,
		swelling: 1.12,
		share: 0.5,
		crownUntil: 0.97,
		shrinksFrom: 0.6,
		path: [
			{ below: 0, y_mm: -24, z_mm: -12.5 },
			{ below: 0.3, y_mm: -21, z_mm: -10.5 },
			{ below: 0.46, y_mm: -19, z_mm: -6.5 },
			{ below: 0.62, y_mm: -15, z_mm: -0.8 },
			{ below: 0.85, y_mm: -8, z_mm: -0.2 },
			{ below: 1, y_mm: 3, z_mm: 0 },
		],
	},
	pit: {
		crownHeight_mm: 26,
		halfLength_mm: 8.5,
		halfWidth_mm: 8,
		taper: 0.74,
		lean_mm: 3.5,
		rootLength_mm: 34,
		swelling: 1.3,
		share: 0.5,
		crownUntil: 0.85,
		shrinksFrom: 0.4,
		path: [
			{ below: 0, y_mm: -15, z_mm: -21 },
			{ below: 0.4, y_mm: -13, z_mm: -14 },
			{ below: 0.65, y_mm: -10, z_mm: -8.5 },
			{ below: 0.88, y_mm: -5, z_mm: -5 },
			{ below: 1, y_mm: 1, z_mm: -1.5 },
		],
	},
	base: {
		crownHeight_mm: 9,
		halfLength_mm: 3,
		halfWidth_mm: 2.1,
		taper: 0.7,
		lean_mm: 1.4,
		rootLength_mm: 5,
		swelling: 1.12,
		share: 1 / 3,
		crownUntil: 0.8,
		shrinksFrom: 0.1,
		path: [
			{ below: 0, y_mm: -3.5, z_mm: -8.6 },
			{ below: 0.5, y_mm: -2.5, z_mm: -6.2 },
			{ below: 0.8, y_mm: -1.4, z_mm: -3.6 },
			{ below: 0.92, y_mm: -0.6, z_mm: -1.6 },
			{ below: 1, y_mm: -0.3, z_mm: -0.5 },
		],
	},
};
