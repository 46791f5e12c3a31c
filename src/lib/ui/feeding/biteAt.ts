import type { Bite, BitePoint } from '../../domain/feeding/bite';

/** Force held against the tooth at a depth, N; straight between the curve's points, the later one where it drops. */
export function forceAt(curve: readonly BitePoint[], depth_mm: number): number {
	let before = curve[0];
	if (!before || depth_mm <= before.depth_mm) return before?.force_N ?? 0;
	for (const point of curve) {
		if (point.depth_mm > depth_mm) {
			const wide = point.depth_mm - before.depth_mm;
			const share = wide > 0 ? (depth_mm - before.depth_mm) / wide : 1;
			return before.force_N + share * (point.force_N - before.force_N);
		}
		before = point;
	}
	return before.force_N;
}

/** Where a press ends: at the goal, or where the crown would snap; share of the goal. */
export const pressEnds = ({ snapsAt_mm, goal_mm }: Bite): number =>
	snapsAt_mm === null || goal_mm <= 0 ? 1 : Math.min(1, snapsAt_mm / goal_mm);

export type SafetyWord = 'snaps' | 'risky' | 'holds' | 'easily';

/** Words for a safety factor. Limits: below 1 the model snaps; 2 and 5 are ours, for telling. */
export const safetyWord = (safety: number): SafetyWord =>
	safety < 1 ? 'snaps' : safety < 2 ? 'risky' : safety < 5 ? 'holds' : 'easily';

/** Decimals that a model's force or stress can bear: two figures. */
export function twoFigures(value: number): number {
	if (!Number.isFinite(value) || value <= 0) return 0;
	const unit = 10 ** (Math.floor(Math.log10(value)) - 1);
	return Math.round(value / unit) * unit;
}
