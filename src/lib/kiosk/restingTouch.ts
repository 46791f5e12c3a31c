/** A finger that stayed longer leans or rests: its click is nobody's wish. As REST_ms of the stage. */
export const LEANING_ms = 3000;
/** More touches at the same time are hands laid flat, or a cloth: two visitors with three fingers each are fewer. */
export const MOST_TOUCHES = 8;

export interface RestingTouch {
	down(id: number, t_ms: number): void;
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
		down(id, t_ms) {
			refused.delete(id);
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
