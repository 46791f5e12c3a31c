import type { Vec3 } from '../domain/vec3';

/** The six views in which teeth are drawn and described, in the trade's words. */
export const TRADE_VIEWS = ['labial', 'lingual', 'mesial', 'distal', 'apical', 'basal'] as const;
export type TradeView = (typeof TRADE_VIEWS)[number];

/** What looks at the viewer in each view, tooth frame (see domain/mesh/triMesh). */
export const TOWARDS_VIEWER: Readonly<Record<TradeView, Vec3>> = {
	labial: [0, 0, 1],
	lingual: [0, 0, -1],
	mesial: [-1, 0, 0],
	distal: [1, 0, 0],
	apical: [0, 1, 0],
	basal: [0, -1, 0],
};
