/** Even numbers from 0 to 1, always the same ones for the same seed (mulberry32, public domain). */
export function seededRandom(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = Math.imul(state ^ (state >>> 15), state | 1);
		t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** A number of the standard normal distribution (Box & Muller 1958, doi:10.1214/aoms/1177706645). */
export function normalFrom(random: () => number): number {
	const radius = Math.sqrt(-2 * Math.log(1 - random()));
	return radius * Math.cos(2 * Math.PI * random());
}
