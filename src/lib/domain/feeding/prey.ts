import type { Elastic } from './hertzContact';

/** What a layer of prey is made of, as far as a tooth feels it. */
export interface FoodMaterial {
	id: string;
	/** pressure at which it gives way under a tip: its strength, or for hard things its hardness */
	resists_MPa: number;
	basis: 'strength' | 'hardness';
	/** parts = is pushed and torn aside, and goes on gripping the tooth; cracks = stops resisting once broken through */
	gives: 'parts' | 'cracks';
	/** for contact pressures; of stiff materials only */
	elastic?: Elastic;
	/** whether edged tips were found to need less force in it; Freeman & Lemen 2006, J. Zool. 269: 51-56 */
	edges: 'help' | 'no-difference' | 'not-tested';
	/** a value that nobody has looked up again */
	recalled: boolean;
	/** measured on another, similar material */
	standIn: boolean;
}

export interface PreyLayer {
	material: FoodMaterial;
	thickness_mm: number;
}

/** A shell that may crack as a whole: all layers that crack, together. */
export interface PreyShell {
	/** how round it is outside */
	radius_mm: number;
	/** tension that breaks it */
	strength_MPa: number;
}

/** What is bitten: layers from outside in. */
export interface PreyBody {
	layers: readonly PreyLayer[];
	shell?: PreyShell;
}
