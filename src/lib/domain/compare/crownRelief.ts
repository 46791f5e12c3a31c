import { SIDE_ANGLE_DEG, type Side } from '../tooth/form';
import type { ComparedTooth } from './traits';

/** Side of the section that an angle lies nearest to. */
export function sideAt(angle_deg: number): Side {
	const off = (side: Side): number => {
		const d = (((angle_deg - SIDE_ANGLE_DEG[side]) % 360) + 360) % 360;
		return Math.min(d, 360 - d);
	};
	const sides: Side[] = ['distal', 'labial', 'mesial', 'lingual'];
	return sides.reduce((best, side) => (off(side) < off(best) - 1e-9 ? side : best));
}

/**
 * Angles of the cutting edges, degrees, and where that is known from; null when it cannot be told. A model has the edges
 * that it was made with: measuring could add nothing but error.
 */
export function edgesOf({
	measures,
	facts,
}: ComparedTooth): { angles_deg: number[]; from: 'measured' | 'form' } | null {
	if (facts.form) return { angles_deg: facts.form.carinae_deg, from: 'form' };
	if (measures.carinaCount === null) return null;
	return { angles_deg: measures.carinae.map(({ angle_deg }) => angle_deg), from: 'measured' };
}

export type RidgeSide = 'all' | 'labial' | 'lingual' | 'one-side';

/** mean of sin(angle) is 0 for ridges all round, 2/pi = 0.64 for ridges on one half only; half of that tells them apart */
const ONE_SIDED = 0.32;

/**
 * How many ridges run anywhere up the crown and on which side; `side` is null without ridges; null when it cannot be
 * told. A model has the ridges that it was made with. On a scan whose labial side is not known one side is only
 * 'one-side'.
 */
export function ridgesOf({
	measures,
	facts,
}: ComparedTooth): { count: number; side: RidgeSide | null; from: 'measured' | 'form' } | null {
	if (facts.form) {
		const { ridges } = facts.form;
		return { count: ridges?.count ?? 0, side: ridges?.sides ?? null, from: 'form' };
	}
	const { ridgeCount, ridges } = measures;
	if (ridgeCount === null) return null;
	const lean = ridges.reduce((sum, { angle_deg }) => sum + Math.sin((angle_deg * Math.PI) / 180), 0);
	const oneSided = Math.abs(lean) >= ONE_SIDED * ridges.length;
	const side = facts.labial === null ? 'one-side' : lean > 0 ? 'labial' : 'lingual';
	return {
		count: ridges.length,
		side: ridges.length === 0 ? null : oneSided ? side : 'all',
		from: 'measured',
	};
}
