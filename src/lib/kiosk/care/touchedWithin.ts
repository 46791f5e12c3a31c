import { TOUCHED_min } from '../../content/screens/beat';

/** The last touch as coarsely as it is told: within so many minutes; null for longer ago. */
export const touchedWithin = (since_ms: number): (typeof TOUCHED_min)[number] | null =>
	TOUCHED_min.find((minutes) => since_ms <= minutes * 60_000) ?? null;
