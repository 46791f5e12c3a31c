/** A finger that stayed longer leans or rests: its click is nobody's wish. As REST_ms of the stage. */
export const LEANING_ms = 3000;
/** More touches at the same time are hands laid flat, or a cloth: two visitors with three fingers each are fewer. */
export const MOST_TOUCHES = 8;
/** Nobody lies on the glass for as long as this. */
export const FORGOTTEN_ms = 60_000;

export interface RestingTouch {
	/** `first`: the browser says that no other finger is down (`isPrimary`). */
	down(id: number, t_ms: number, first?: boolean): void;
	/** Lifted, or lost. */
	up(id: number, t_ms: number): void;
	/** Whether a click that this contact made shall count for nothing. */
	refuses(id: number): boolean;
}

/** Tells touches that mean something from palms, elbows and cloths, for everything that is pressed. */
export function restingTouch(): RestingTouch {
	const down = new Map<number, number>();
	/** lifted: their click comes next */
	const refused = new Set<number>();
	let crowd = false;
	return {
		down(id, t_ms, first = false) {
			refused.delete(id);
			// a finger whose lifting was never told, by a driver's fault, must not press on the glass for ever
			for (const [other, since] of down) if (first || t_ms - since > FORGOTTEN_ms) down.delete(other);
			if (down.size === 0) crowd = false;
			down.set(id, t_ms);
			if (down.size > MOST_TOUCHES) crowd = true;
		},
		up(id, t_ms) {
			const since = down.get(id);
			if (since === undefined) return;
			if (crowd || t_ms - since > LEANING_ms) refused.add(id);
			down.delete(id);
			// the last of many is still one of them
			if (down.size === 0) crowd = false;
			if (refused.size > 64) refused.delete(refused.values().next().value!);
		},
		refuses: (id) => refused.delete(id),
	};
}
