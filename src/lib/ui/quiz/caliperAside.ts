import { ACROSS } from '../../domain/measure/cutSection';
import type { StageView, SurfaceHit } from '../../stage/api';

/** Shares of the crown's height at which the ends lie before anybody has measured: well inside the crown. */
const HEIGHTS = [0.72, 0.32] as const;

/**
 * Where the caliper of a question lies at first: across the middle of the face that looks at the viewer, so that it
 * measures nothing asked for. Null while the view is empty.
 */
export function caliperAside(
	view: Pick<StageView, 'middleAt' | 'outermost' | 'snap'>,
	crownHeight_mm: number,
): [SurfaceHit, SurfaceHit] | null {
	const [upper, lower] = HEIGHTS.map((share) => {
		const middle = view.middleAt(ACROSS, share * crownHeight_mm);
		return middle && view.outermost(middle, [0, 0, 1]);
	});
	return upper && lower ? [upper, lower] : null;
}
