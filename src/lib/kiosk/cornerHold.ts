/** How long a finger is held: longer than anybody rests one by chance on a place where nothing is to be seen. */
export const HOLD_ms = 3000;
/** Sooner than this nothing shows: a tap on what lies there draws no ring. */
export const SHOW_ms = 500;
/** A finger that wanders further does something else. CSS px. */
const WANDER_px = 24;

export interface CornerHold {
	/** A contact has come down in the corner. */
	down(id: number, x: number, y: number): void;
	move(id: number, x: number, y: number): void;
	/** Lifted or lost. */
	up(id: number): void;
	/** Nothing is held any more. */
	drop(): void;
}

/**
 * Whether one finger is held in the staff corner. `seen` is told where to show that it is held, and null when it is not;
 * `open` once it has been held long enough. What others do elsewhere on the screen meanwhile makes no difference.
 */
export function cornerHold(
	seen: (at: { x: number; y: number } | null) => void,
	open: () => void,
	later: (call: () => void, ms: number) => () => void = (call, ms) => {
		const timer = setTimeout(call, ms);
		return () => clearTimeout(timer);
	},
): CornerHold {
	let held: { id: number; x: number; y: number; ends: (() => void)[] } | null = null;
	const drop = () => {
		if (!held) return;
		for (const end of held.ends) end();
		held = null;
		seen(null);
	};
	return {
		down(id, x, y) {
			// two fingers in the corner are a hand
			if (held) return drop();
			const ends = [
				later(() => seen({ x, y }), SHOW_ms),
				later(() => {
					drop();
					open();
				}, HOLD_ms),
			];
			held = { id, x, y, ends };
		},
		move(id, x, y) {
			if (held?.id === id && Math.hypot(x - held.x, y - held.y) > WANDER_px) drop();
		},
		up(id) {
			if (held?.id === id) drop();
		},
		drop,
	};
}

export interface Corner {
	width_px: number;
	/** of the part that hands reach, from the top of the window */
	top_px: number;
	side_px: number;
	rightToLeft: boolean;
}

/**
 * Whether a place lies in the staff corner: at the top, where no hand rests, at the end of the line, away from the way
 * home; in the low layout at the top of what hands reach.
 */
export function inCorner(x: number, y: number, { width_px, top_px, side_px, rightToLeft }: Corner): boolean {
	const across = rightToLeft ? x : width_px - x;
	return across >= 0 && across <= side_px && y >= top_px && y <= top_px + side_px;
}
