import type { Vec3 } from '../domain/vec3';

/** The six views in which teeth are drawn and described, in the trade's words. */
export const TRADE_VIEWS = ['labial', 'lingual', 'mesial', 'distal', 'apical', 'basal'] as const;
export type TradeView = (typeof TRADE_VIEWS)[number];

/** What looks at the viewer in each view of a tooth whose lip side lies along +z, tooth frame (see domain/mesh/triMesh). */
const TOWARDS_VIEWER: Readonly<Record<TradeView, Vec3>> = {
	labial: [0, 0, 1],
	lingual: [0, 0, -1],
	mesial: [-1, 0, 0],
	distal: [1, 0, 0],
	apical: [0, 1, 0],
	basal: [0, -1, 0],
};

/**
 * What looks at the viewer in a view. A scan is never mirrored, so that its lip side may lie along -z; where that is
 * not known (null) it is taken for +z, as the measures take it.
 */
export function towardsViewer(view: TradeView, labial: '+z' | '-z' | null): Vec3 {
	const [x, y, z] = TOWARDS_VIEWER[view];
	return labial === '-z' ? [x, y, z === 0 ? 0 : -z] : [x, y, z];
}
