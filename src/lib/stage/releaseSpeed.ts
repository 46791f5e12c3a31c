import { FLICK_STALE_ms } from './thresholds';

/** One move of a finger. */
export interface Sample {
	/** time of the event and since the one before it, ms */
	t: number;
	dt: number;
	/** CSS px */
	dx: number;
	dy: number;
}

/** Mean speed of a finger over its last moments before it lifted, CSS px per ms; zero when it had come to rest. */
export const releaseSpeed = (samples: readonly Sample[], lifted_ms: number): { vx: number; vy: number } => {
	const fresh = samples.filter((s) => lifted_ms - s.t <= FLICK_STALE_ms);
	if (fresh.length === 0) return { vx: 0, vy: 0 };
	const span = Math.max(1, lifted_ms - (fresh[0].t - fresh[0].dt));
	const sum = fresh.reduce((s, m) => ({ dx: s.dx + m.dx, dy: s.dy + m.dy }), { dx: 0, dy: 0 });
	return { vx: sum.dx / span, vy: sum.dy / span };
};
