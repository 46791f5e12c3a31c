/**
 * How one cycle of a position is divided. No published shares were found: these are ours, and a screen says so.
 * Shares of the period, in order: erupting, in use, loosening (about to fall), empty.
 */
export interface CycleShares {
	erupting: number;
	loosening: number;
	/** functional share of the period = 1 - empty; 0.80 to 0.95 is an assumption */
	empty: number;
}

export const CYCLE_SHARES: CycleShares = { erupting: 0.14, loosening: 0.16, empty: 0.1 };
