/**
 * Lets at most `most` things pass in any window of that many milliseconds, all askers together: a screen needs little,
 * and nobody else has any business here.
 */
export function rateLimit(most: number, window_ms: number, now: () => number = Date.now): () => boolean {
	let passed: number[] = [];
	return () => {
		const time = now();
		// a clock set back must not block for long
		passed = passed.filter((then) => time - then < window_ms && then <= time);
		if (passed.length >= most) return false;
		passed.push(time);
		return true;
	};
}
