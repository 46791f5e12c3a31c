/**
 * An independent reader of QR symbols, versions 1 to 6 at error correction level M, after ISO/IEC 18004:2015 (format
 * information 7.9, masks 7.8.2, placement 7.7.3, blocks table 9, error correction 7.5.2). Corrects nothing: any wrong
 * module shows in `syndromesAreZero`.
 */
export interface ReadQr {
	mask: number;
	/** data codewords, blocks joined */
	data: number[];
	/** error correction codewords, blocks joined */
	correction: number[];
	/** every block is a word of its Reed-Solomon code */
	syndromesAreZero: boolean;
}

/** data codewords and error correction codewords of a block, and number of blocks, at level M: table 9 */
const BLOCKS: Readonly<Record<number, [data: number, correction: number, blocks: number]>> = {
	1: [16, 10, 1],
	2: [28, 16, 1],
	3: [44, 26, 1],
	4: [32, 18, 2],
	5: [43, 24, 2],
	6: [27, 16, 4],
};

/** Table 10: what turns a module over, by row i and column j. */
const MASKS: readonly ((i: number, j: number) => boolean)[] = [
	(i, j) => (i + j) % 2 === 0,
	(i) => i % 2 === 0,
	(_, j) => j % 3 === 0,
	(i, j) => (i + j) % 3 === 0,
	(i, j) => (Math.floor(i / 2) + Math.floor(j / 3)) % 2 === 0,
	(i, j) => ((i * j) % 2) + ((i * j) % 3) === 0,
	(i, j) => (((i * j) % 2) + ((i * j) % 3)) % 2 === 0,
	(i, j) => (((i + j) % 2) + ((i * j) % 3)) % 2 === 0,
];

export function readQr(modules: readonly (readonly boolean[])[]): ReadQr {
	const size = modules.length;
	const version = (size - 17) / 4;
	const [perBlock, perCorrection, blocks] = BLOCKS[version];

	// format information beside the upper left finder, most significant bit first
	const places = [
		...[0, 1, 2, 3, 4, 5, 7, 8].map((column) => [8, column]),
		...[7, 5, 4, 3, 2, 1, 0].map((row) => [row, 8]),
	];
	const format = places.reduce((bits, [row, column]) => (bits << 1) | Number(modules[row][column]), 0);
	const information = (format ^ 0b101010000010010) >> 10;
	if (information >> 3 !== 0b00) throw new Error('readQr: the symbol is not of level M');
	const mask = information & 0b111;

	const isFunction = (row: number, column: number): boolean => {
		const far = size - 9;
		if (row <= 8 && (column <= 8 || column > far)) return true;
		if (row > far && column <= 8) return true;
		if (row === 6 || column === 6) return true;
		// the one alignment pattern of versions 2 to 6
		const centre = size - 7;
		return version > 1 && Math.abs(row - centre) <= 2 && Math.abs(column - centre) <= 2;
	};
	// from the lower right, two columns at a time, up and down by turns, past the timing column
	const bits: boolean[] = [];
	let up = true;
	for (let right = size - 1; right > 0; right -= 2) {
		if (right === 6) right -= 1;
		for (let step = 0; step < size; step += 1) {
			const row = up ? size - 1 - step : step;
			for (const column of [right, right - 1]) {
				if (isFunction(row, column)) continue;
				bits.push(modules[row][column] !== MASKS[mask](row, column));
			}
		}
		up = !up;
	}
	const codewords = Array.from({ length: (perBlock + perCorrection) * blocks }, (_, i) =>
		bits.slice(8 * i, 8 * i + 8).reduce((byte, bit) => (byte << 1) | Number(bit), 0),
	);
	const from = (start: number, count: number, block: number) =>
		Array.from({ length: count }, (_, i) => codewords[start + i * blocks + block]);
	const all = Array.from({ length: blocks }, (_, block) => ({
		data: from(0, perBlock, block),
		correction: from(perBlock * blocks, perCorrection, block),
	}));
	return {
		mask,
		data: all.flatMap(({ data }) => data),
		correction: all.flatMap(({ correction }) => correction),
		syndromesAreZero: all.every(({ data, correction }) =>
			isCodeword([...data, ...correction], perCorrection),
		),
	};
}

/** Whether the polynomial vanishes at the first `roots` powers of 2 in GF(256) over x^8+x^4+x^3+x^2+1. */
function isCodeword(word: readonly number[], roots: number): boolean {
	let root = 1;
	for (let i = 0; i < roots; i += 1) {
		const value = word.reduce((sum, coefficient) => times(sum, root) ^ coefficient, 0);
		if (value !== 0) return false;
		root = times(root, 2);
	}
	return true;
}

function times(a: number, b: number): number {
	let product = 0;
	for (let left = a, right = b; right > 0; right >>= 1) {
		if (right & 1) product ^= left;
		left <<= 1;
		if (left > 255) left ^= 0b100011101;
	}
	return product;
}

/** Text of a symbol whose only segments are of byte or alphanumeric mode (7.4.4 and 7.4.5), versions 1 to 9. */
export function textOf(data: readonly number[]): string {
	const bits = data.map((byte) => byte.toString(2).padStart(8, '0')).join('');
	let at = 0;
	const take = (count: number) => Number.parseInt(bits.slice(at, (at += count)) || '0', 2);
	let text = '';
	while (at + 4 <= bits.length) {
		const mode = take(4);
		if (mode === 0) break;
		if (mode === 0b0100) {
			const bytes = Array.from({ length: take(8) }, () => take(8));
			text += new TextDecoder().decode(new Uint8Array(bytes));
		} else if (mode === 0b0010) {
			const signs = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';
			for (let left = take(9); left > 0; left -= 2) {
				if (left === 1) text += signs[take(6)];
				else {
					const pair = take(11);
					text += signs[Math.floor(pair / 45)] + signs[pair % 45];
				}
			}
		} else if (mode === 0b0001) {
			for (let left = take(10); left > 0; left -= 3) {
				const digits = Math.min(3, left);
				text += String(take([0, 4, 7, 10][digits])).padStart(digits, '0');
			}
		} else throw new Error(`textOf: mode ${mode} is not read here`);
	}
	return text;
}
