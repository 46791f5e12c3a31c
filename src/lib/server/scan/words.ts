const SPACE = 32;
const TAB = 9;
const LF = 10;
const CR = 13;

/** powers of ten that a double holds exactly */
const TEN = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

/**
 * Walks through text as bytes, word by word and line by line, without making strings of it: a scan of a million
 * triangles is a text of 30 to 250 million characters. Lines end with LF, CR LF or CR.
 */
export class Words {
	/** the present word is bytes[from .. to) */
	from = 0;
	to = 0;
	/** number of the present line, from 1 */
	line = 1;

	constructor(
		readonly bytes: Uint8Array,
		public at = 0,
		readonly end = bytes.length,
	) {}

	/** Goes to the next word of this line; false at the line's end. */
	next(): boolean {
		const { bytes, end } = this;
		let i = this.at;
		while (i < end && (bytes[i] === SPACE || bytes[i] === TAB)) i++;
		this.from = i;
		while (i < end && bytes[i] > SPACE) i++;
		// other control characters count as a word of their own, so that nothing stands still
		if (i === this.from && i < end && bytes[i] !== LF && bytes[i] !== CR) i++;
		this.to = i;
		this.at = i;
		return i > this.from;
	}

	/** Goes to the start of the next line; false at the end of the text. */
	nextLine(): boolean {
		const { bytes, end } = this;
		let i = this.at;
		while (i < end && bytes[i] !== LF && bytes[i] !== CR) i++;
		if (i >= end) {
			this.at = end;
			return false;
		}
		this.at = bytes[i] === CR && bytes[i + 1] === LF ? i + 2 : i + 1;
		this.line++;
		return true;
	}

	/** Goes to the next word, on whatever line; false at the end of the text. */
	nextAnywhere(): boolean {
		while (!this.next()) if (!this.nextLine()) return false;
		return true;
	}

	/** Whether the present word is this one, capitals or not; `word` in small letters. */
	is(word: string): boolean {
		if (this.to - this.from !== word.length) return false;
		for (let i = 0; i < word.length; i++) {
			const byte = this.bytes[this.from + i];
			const small = byte >= 65 && byte <= 90 ? byte + 32 : byte;
			if (small !== word.charCodeAt(i)) return false;
		}
		return true;
	}

	/** The present word, at most its first 100 bytes: a damaged file may be one word of millions. */
	text(): string {
		return new TextDecoder().decode(this.bytes.subarray(this.from, Math.min(this.to, this.from + 100)));
	}

	/** The present word as a number; NaN if it is none. */
	number(): number {
		return numberIn(this.bytes, this.from, this.to);
	}
}

/** The decimal number that stands in bytes[from .. to); NaN if there is none. */
export function numberIn(bytes: Uint8Array, from: number, to: number): number {
	let i = from;
	const minus = bytes[i] === 45;
	if (minus || bytes[i] === 43) i++;
	let digits = 0;
	let value = 0;
	let scale = 0;
	for (; i < to; i++) {
		const d = bytes[i] - 48;
		if (d < 0 || d > 9) break;
		value = value * 10 + d;
		digits++;
	}
	if (i < to && bytes[i] === 46) {
		for (i++; i < to; i++) {
			const d = bytes[i] - 48;
			if (d < 0 || d > 9) break;
			value = value * 10 + d;
			digits++;
			scale--;
		}
	}
	if (digits === 0) return slowNumber(bytes, from, to);
	if (i < to && (bytes[i] | 32) === 101) {
		let j = i + 1;
		const down = bytes[j] === 45;
		if (down || bytes[j] === 43) j++;
		let power = 0;
		const first = j;
		for (; j < to && j < first + 4; j++) {
			const d = bytes[j] - 48;
			if (d < 0 || d > 9) break;
			power = power * 10 + d;
		}
		if (j === first) return NaN;
		scale += down ? -power : power;
		i = j;
	}
	if (i !== to) return NaN;
	// up to 2^53 and 10^22 one multiplication or division rounds correctly; beyond, the slow way does
	if (value > Number.MAX_SAFE_INTEGER || scale < -22 || scale > 22) return slowNumber(bytes, from, to);
	const size = scale < 0 ? value / TEN[-scale] : value * TEN[scale];
	return minus ? -size : size;
}

function slowNumber(bytes: Uint8Array, from: number, to: number): number {
	if (to - from > 400) return NaN;
	const text = new TextDecoder().decode(bytes.subarray(from, to));
	return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : NaN;
}
