/**
 * OUR toy of Osborn's idea (1970, 1971) that each new tooth keeps its neighbours from starting; not a published model.
 * Each position runs a clock from 0 to 1 in one period. At 1 it starts a new tooth only if both neighbours stand at
 * `inhibition` or later; otherwise it waits. No signal runs along the jaw, yet neighbours come to alternate.
 */
export interface InhibitionSetup {
	positions: number;
	period_d: number;
	/** p: how far, in periods, a neighbour must have come; 0 .. 0.9 */
	inhibition: number;
}

export interface InhibitionRun {
	setup: InhibitionSetup;
	/** start of each tooth by position, rising, days; the first is before 0 */
	starts_d: number[][];
	/** the run ends here, days */
	end_d: number;
}

/** Runs the clocks from random beginnings to `end_d`, event by event. */
export function runInhibition(setup: InhibitionSetup, end_d: number, random: () => number): InhibitionRun {
	const { positions, period_d, inhibition } = setup;
	const starts_d = Array.from({ length: positions }, () => [-random() * period_d]);
	const last = starts_d.map(([start]) => start);
	const wait = inhibition * period_d;
	/** earliest time at which a position may start */
	const ready = (n: number): number =>
		Math.max(last[n] + period_d, (last[n - 1] ?? -Infinity) + wait, (last[n + 1] ?? -Infinity) + wait);
	const next = last.map((_, n) => ready(n));
	for (;;) {
		let first = 0;
		for (let n = 1; n < positions; n++) if (next[n] < next[first]) first = n;
		const now = next[first];
		if (now > end_d) return { setup, starts_d, end_d };
		last[first] = now;
		starts_d[first].push(now);
		for (const n of [first - 1, first, first + 1]) if (n >= 0 && n < positions) next[n] = ready(n);
	}
}

/** Phases at a time: periods since the last start, at most 1 (1 = ready and waiting). */
export function inhibitionPhases({ setup, starts_d }: InhibitionRun, t_d: number): number[] {
	return starts_d.map((starts) => {
		let [low, high] = [0, starts.length - 1];
		while (low < high) {
			const middle = (low + high + 1) >> 1;
			if (starts[middle] <= t_d) low = middle;
			else high = middle - 1;
		}
		return Math.min(1, Math.max(0, (t_d - starts[low]) / setup.period_d));
	});
}

export interface InhibitionResult {
	/** mean time between neighbours' last starts, cycles, the shorter way round (0 .. 0.5) */
	neighbourOffset: number;
	/** mean time between starts at a position in the second half of the run, days */
	period_d: number;
}

/** What came out of a run. */
export function inhibitionResult({ setup, starts_d, end_d }: InhibitionRun): InhibitionResult {
	let [spans, gaps] = [0, 0];
	for (const starts of starts_d) {
		const late = starts.filter((start) => start >= end_d / 2);
		if (late.length < 2) continue;
		spans += late[late.length - 1] - late[0];
		gaps += late.length - 1;
	}
	const period_d = spans / gaps;
	let [sum, pairs] = [0, 0];
	for (let n = 0; n + 1 < setup.positions; n++) {
		const [a, b] = [starts_d[n], starts_d[n + 1]];
		const cycles = Math.abs(a[a.length - 1] - b[b.length - 1]) / period_d;
		const apart = cycles - Math.floor(cycles);
		sum += Math.min(apart, 1 - apart);
		pairs++;
	}
	return { neighbourOffset: sum / pairs, period_d };
}
