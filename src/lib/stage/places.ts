/** Numbers the places where vertices stand; copies at one place (for a crease or a border of regions) share one. */
export const places = (positions: ArrayLike<number>): { of: Uint32Array; count: number } => {
	const bits = new Uint32Array(Float32Array.from(positions, (value) => value + 0).buffer);
	const vertices = positions.length / 3;
	const of = new Uint32Array(vertices);
	// open addressing: twice as many slots as vertices, at least
	const mask = 2 ** Math.ceil(Math.log2(Math.max(2, vertices * 2))) - 1;
	const slots = new Int32Array(mask + 1).fill(-1);
	let count = 0;
	for (let i = 0; i < vertices; i++) {
		const [x, y, z] = [bits[i * 3], bits[i * 3 + 1], bits[i * 3 + 2]];
		let slot = Math.imul(
			Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b) ^ Math.imul(z, 0xc2b2ae35),
			0x27d4eb2f,
		);
		slot = (slot ^ (slot >>> 15)) & mask;
		for (;;) {
			const other = slots[slot];
			if (other < 0) {
				slots[slot] = i;
				of[i] = count++;
				break;
			}
			if (bits[other * 3] === x && bits[other * 3 + 1] === y && bits[other * 3 + 2] === z) {
				of[i] = of[other];
				break;
			}
			slot = (slot + 1) & mask;
		}
	}
	return { of, count };
};
