/** A page as young as this is left alone, whatever a clock says. */
const YOUNG_ms = 3600_000;
/** Where no night comes, because a clock stands still or is wrong. */
const OLD_ms = 36 * 3600_000;
/** WebGL may go once when a driver is updated; a third time something is broken. */
const MANY_LOSSES = 3;
/** After such a reload it is given some time. */
const AFTER_LOSSES_ms = 300_000;
/** Screens of one house do not all ask for everything in one second. */
export const MOST_JITTER_min = 20;

export type ReloadReason = 'night' | 'age' | 'graphics';

export interface PageAge {
	/** since it was loaded, by a clock that does not jump */
	uptime_ms: number;
	/** the clock on the wall */
	clock: Date;
	reloadAt_min: number;
	/** of this page, 0 .. MOST_JITTER_min */
	jitter_min: number;
	/** how often WebGL went away */
	losses: number;
}

/**
 * Why a page that nobody uses should be loaded anew; null for no reason. At night: if it was loaded before the last
 * time that the clock showed `reloadAt_min`. A page that was loaded after it is new enough until the next night, also
 * where an hour comes twice or not at all.
 */
export function reloadReason({
	uptime_ms,
	clock,
	reloadAt_min,
	jitter_min,
	losses,
}: PageAge): ReloadReason | null {
	if (losses >= MANY_LOSSES && uptime_ms >= AFTER_LOSSES_ms) return 'graphics';
	if (uptime_ms < YOUNG_ms) return null;
	if (uptime_ms >= OLD_ms) return 'age';
	const night = new Date(clock);
	night.setHours(0, reloadAt_min + jitter_min, 0, 0);
	if (night > clock) night.setDate(night.getDate() - 1);
	return uptime_ms > clock.getTime() - night.getTime() ? 'night' : null;
}
