/** Columns and rows of the crown: 2 * 1000 * 500 triangles, its flat base among them. */
const AROUND = 1000;
const UP = 500;

/**
 * A binary STL of exactly 1,000,000 triangles, in mm: a bent crown 50 mm high with 20 ridges, cut flat at its base, and as
 * rough as a scanner's surface (0.01 mm). The same bytes each time.
 */
export function bigScan(): Uint8Array {
	const triangles = 2 * AROUND * UP;
	const bytes = new Uint8Array(84 + triangles * 50);
	const view = new DataView(bytes.buffer);
	view.setUint32(80, triangles, true);
	const corner = (i: number, row: number): [number, number, number] => {
		const u = row / UP;
		const angle = (2 * Math.PI * (i % AROUND)) / AROUND;
		// sines of large numbers are as good as noise here
		const rough = 0.01 * Math.sin(12.9898 * (i % AROUND) + 78.233 * row) * (row === 0 ? 0 : 1);
		const ridge = 0.25 * Math.cos(20 * angle) * Math.min(1, 8 * u * (1 - u));
		const across = row === UP ? 0 : 10 * Math.sqrt(1 - u) + ridge + rough;
		return [across * Math.cos(angle) + 9 * u * u, 50 * u, across * 0.8 * Math.sin(angle)];
	};
	let at = 84;
	const add = (...corners: [number, number, number][]): void => {
		corners.forEach((point, k) =>
			point.forEach((value, axis) => view.setFloat32(at + 12 + k * 12 + axis * 4, value, true)),
		);
		at += 50;
	};
	for (let row = 0; row < UP; row++) {
		for (let i = 0; i < AROUND; i++) {
			const [a, b, c, d] = [corner(i, row), corner(i + 1, row), corner(i, row + 1), corner(i + 1, row + 1)];
			add(a, c, b);
			// the last row meets in the tip; its other halves make the base
			if (row < UP - 1) add(b, c, d);
			else add(corner(i, 0), corner(i + 1, 0), [0, 0, 0]);
		}
	}
	return bytes;
}
