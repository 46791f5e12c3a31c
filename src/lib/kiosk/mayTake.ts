export interface Table {
	/** fingers that lie on the glass now */
	fingers: number;
	/** since the last one was lifted, ms */
	sinceLifted_ms: number;
	/** somebody may be at work here: not the attract loop, not a window in the background, not the desk */
	atWork: boolean;
	/** addresses of the shapes that views show now, as `/shapes/<hash>.glb` */
	shown: readonly string[];
}

/** A finger that is about to tap again, ms. common practice, no source */
const SETTLED_ms = 300;

/**
 * Whether a changed exhibit may come onto the screen now. Words may change before a visitor's eyes, but nothing under a
 * finger; and a tooth that lies in front of somebody neither vanishes nor becomes another until it is put away.
 * `shapes`: hashes of the shapes that the changed exhibit has.
 */
export function mayTake(shapes: readonly string[], table: Table): boolean {
	if (table.fingers > 0 || table.sinceLifted_ms < SETTLED_ms) return false;
	if (!table.atWork) return true;
	const there = new Set(shapes);
	return table.shown.every((address) => there.has(/([^/]+)\.glb$/.exec(address)?.[1] ?? ''));
}
