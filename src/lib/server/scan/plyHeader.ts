import { ScanFault } from './scanProblem';

export type PlyType = 'i8' | 'u8' | 'i16' | 'u16' | 'i32' | 'u32' | 'f32' | 'f64';

export interface PlyProperty {
	name: string;
	type: PlyType;
	/** type of the number of items before a list; null for a single value */
	countType: PlyType | null;
}

export interface PlyElement {
	name: string;
	count: number;
	properties: PlyProperty[];
}

export interface PlyHeader {
	encoding: 'ascii' | 'little' | 'big';
	elements: PlyElement[];
	/** where the data begin, bytes */
	dataAt: number;
	/** lines of the header */
	lines: number;
}

export const PLY_SIZE: Readonly<Record<PlyType, number>> = {
	i8: 1,
	u8: 1,
	i16: 2,
	u16: 2,
	i32: 4,
	u32: 4,
	f32: 4,
	f64: 8,
};

/** Names of types: the original ones and those with their size. */
const TYPES: Readonly<Record<string, PlyType>> = {
	char: 'i8',
	int8: 'i8',
	uchar: 'u8',
	uint8: 'u8',
	short: 'i16',
	int16: 'i16',
	ushort: 'u16',
	uint16: 'u16',
	int: 'i32',
	int32: 'i32',
	uint: 'u32',
	uint32: 'u32',
	float: 'f32',
	float32: 'f32',
	double: 'f64',
	float64: 'f64',
};

const ENCODINGS: Readonly<Record<string, PlyHeader['encoding']>> = {
	ascii: 'ascii',
	binary_little_endian: 'little',
	binary_big_endian: 'big',
};

/** longest header that is read; those of scanners have a few hundred bytes */
const MOST_BYTES = 1 << 20;
const MOST_PROPERTIES = 1000;

/** Reads a PLY's header. Throws ScanFault. */
export function plyHeader(bytes: Uint8Array): PlyHeader {
	const { lines, dataAt } = headerLines(bytes);
	let encoding: PlyHeader['encoding'] | null = null;
	const elements: PlyElement[] = [];
	let properties = 0;
	for (const [i, line] of lines.entries()) {
		const words = line.trim().split(/\s+/);
		const wrong = (why: string) => new ScanFault('damaged', `Line ${i + 2} of its header: ${why}`);
		if (words[0] === 'format') {
			if (!Object.hasOwn(ENCODINGS, words[1] ?? '')) throw wrong('the encoding is not one that PLY has.');
			encoding = ENCODINGS[words[1]];
		} else if (words[0] === 'element') {
			if (!/^\d+$/.test(words[2] ?? '')) {
				throw new ScanFault(
					'count-lies',
					`Line ${i + 2} of its header: "${(words[2] ?? '').slice(0, 20)}" is no number of ${(words[1] ?? '').slice(0, 20)}.`,
				);
			}
			elements.push({ name: words[1], count: Number(words[2]), properties: [] });
		} else if (words[0] === 'property') {
			const element = elements.at(-1);
			if (!element) throw wrong('a property stands before its element.');
			const list = words[1] === 'list';
			const types = list ? words.slice(2, 4) : [words[1]];
			const name = words[list ? 4 : 2];
			if (!types.every((type) => type !== undefined && Object.hasOwn(TYPES, type)) || name === undefined) {
				throw wrong('a property with an unknown type or without a name.');
			}
			if (++properties > MOST_PROPERTIES) throw wrong(`more than ${MOST_PROPERTIES} properties.`);
			element.properties.push({
				name: name.toLowerCase(),
				type: TYPES[types[types.length - 1]],
				countType: list ? TYPES[types[0]] : null,
			});
		} else if (words[0] !== 'comment' && words[0] !== 'obj_info' && words[0] !== '') {
			throw wrong(`"${words[0].slice(0, 40)}" does not belong there.`);
		}
	}
	if (!encoding) throw new ScanFault('damaged', 'Its header does not say how the data are written.');
	return { encoding, elements, dataAt, lines: lines.length + 2 };
}

/** The lines between "ply" and "end_header". The first line's end says how all lines end, LF, CR LF or CR. */
function headerLines(bytes: Uint8Array): { lines: string[]; dataAt: number } {
	const text = new TextDecoder('latin1').decode(bytes.subarray(0, MOST_BYTES));
	const first = /^ply[ \t]*(\r\n|\n|\r)/i.exec(text);
	if (!first) {
		if (/^ply\s*$/i.test(text)) throw new ScanFault('truncated', 'It ends in its header.');
		throw new ScanFault('not-a-mesh', 'It does not begin with "ply", as every PLY file does.');
	}
	const lineEnd = first[1];
	const lines: string[] = [];
	for (let at = first[0].length; ;) {
		const end = text.indexOf(lineEnd, at);
		const line = text.slice(at, end < 0 ? undefined : end);
		if (/^end_header[ \t]*$/i.test(line)) {
			return { lines, dataAt: end < 0 ? text.length : end + lineEnd.length };
		}
		if (end < 0) {
			const long = bytes.length > MOST_BYTES;
			throw new ScanFault(
				long ? 'damaged' : 'truncated',
				long ? 'Its header has no end.' : 'It ends in its header.',
			);
		}
		lines.push(line);
		at = end + lineEnd.length;
	}
}
