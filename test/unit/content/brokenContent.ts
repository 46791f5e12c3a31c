import type { Overlay } from './validContent';

/** Files of the valid exhibit that most cases break. */
export const S1 = 'specimens/skm-0001/specimen.yaml';
export const S2 = 'specimens/skm-0002/specimen.yaml';
export const L1 = 'specimens/skm-0001/label.en.md';
export const F1 = 'specimens/skm-0001/label.fr.md';

export interface ExpectedProblem {
	/** file:line:column */
	at: string;
	id: string;
	severity: 'error' | 'warning';
	path: string;
	message: string;
	remedy: string;
}

/** One mistake that a curator may make, laid over the valid exhibit. */
export interface BrokenCase {
	name: string;
	overlay: Overlay;
	/** ids of the specimens that still show; null when there is no exhibit at all */
	shows: string[] | null;
	/** every problem, word for word */
	problems: ExpectedProblem[];
}
