import { pxPerMm } from './pxPerMm';

/**
 * Heights above the floor that a hand can reach, mm.
 * all: forward reach from a wheelchair, EN 301 549 8.3 and ADA 2010 308.2.1 (380 .. 1220).
 * children: ages 5 to 12, the overlap of the ranges in ADA 2010, 308.1 advisory (455 .. 1015).
 */
export const REACH_mm = { all: { low: 380, high: 1220 }, children: { low: 455, high: 1015 } } as const;

/** Less than this, and no room's controls find place: then children's reach gives way. Our own figure. */
const LEAST_ZONE_mm = 190;

/** Where the mounting is unknown, controls keep to this lower part of the screen. Our own figure. */
const UNKNOWN_SHARE = 0.5;

export interface ReachZone {
	/** shares of the screen's height, from its top: what lies between them can be reached */
	top: number;
	bottom: number;
	/** the same above the floor, mm; null where nobody says how the screen hangs */
	highest_mm: number | null;
	lowest_mm: number | null;
}

/**
 * The part of a screen that all controls keep to in the low layout. Within children's reach where that
 * leaves enough of the screen, else within everybody's. `bottomEdge_mm` is the height of the picture's
 * lower edge above the floor. A screen that hangs out of reach altogether gives its lowest strip.
 */
export function reachZone(screen: {
	diagonal_in: number;
	width_px: number;
	height_px: number;
	bottomEdge_mm?: number;
}): ReachZone {
	const { bottomEdge_mm, height_px } = screen;
	if (bottomEdge_mm === undefined)
		return { top: 1 - UNKNOWN_SHARE, bottom: 1, highest_mm: null, lowest_mm: null };
	const height_mm = height_px / pxPerMm(screen);
	const topEdge_mm = bottomEdge_mm + height_mm;
	const least_mm = Math.min(LEAST_ZONE_mm, height_mm);
	const within = ({ low, high }: { low: number; high: number }) => ({
		lowest_mm: Math.min(Math.max(bottomEdge_mm, low), topEdge_mm - least_mm),
		highest_mm: Math.min(topEdge_mm, high),
	});
	let zone = within(REACH_mm.children);
	if (zone.highest_mm - zone.lowest_mm < least_mm) {
		zone = within(REACH_mm.all);
		// no higher than needed
		zone.highest_mm = Math.min(zone.highest_mm, Math.max(REACH_mm.children.high, zone.lowest_mm + least_mm));
	}
	zone.highest_mm = Math.max(zone.highest_mm, zone.lowest_mm + least_mm);
	return {
		top: Math.max(0, (topEdge_mm - zone.highest_mm) / height_mm),
		bottom: Math.min(1, (topEdge_mm - zone.lowest_mm) / height_mm),
		...zone,
	};
}
