import { PLY_SIZE, type PlyHeader, type PlyType } from './plyHeader';
import { ScanFault } from './scanProblem';
import { Words } from './words';

/** Hands out the values of a PLY's data one after another, however they are written. */
export interface PlySource {
	readonly text: boolean;
	/** goes to the next record of an element */
	begin(): void;
	value(type: PlyType): number;
	/** ends a record */
	finish(): void;
	/** bytes not yet read */
	left(): number;
	/** least bytes that one value of a type takes */
	least(type: PlyType): number;
	/** where the reading stands, for a message */
	place(): string;
	/** whether anything but space follows */
	more(): boolean;
}

export function plySource(bytes: Uint8Array, header: PlyHeader): PlySource {
	return header.encoding === 'ascii' ? textSource(bytes, header) : binarySource(bytes, header);
}

function binarySource(bytes: Uint8Array, { dataAt, encoding }: PlyHeader): PlySource {
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
	const little = encoding === 'little';
	let at = dataAt;
	const ended = () => new ScanFault('truncated', 'It ends before all the data that its header announces.');
	return {
		text: false,
		begin: () => undefined,
		finish: () => undefined,
		value(type) {
			const from = at;
			at += PLY_SIZE[type];
			if (at > bytes.length) throw ended();
			switch (type) {
				case 'f32':
					return view.getFloat32(from, little);
				case 'i32':
					return view.getInt32(from, little);
				case 'u8':
					return view.getUint8(from);
				case 'u32':
					return view.getUint32(from, little);
				case 'f64':
					return view.getFloat64(from, little);
				case 'i8':
					return view.getInt8(from);
				case 'i16':
					return view.getInt16(from, little);
				case 'u16':
					return view.getUint16(from, little);
			}
		},
		left: () => bytes.length - at,
		least: (type) => PLY_SIZE[type],
		place: () => `byte ${at}`,
		// a few bytes of padding do no harm
		more: () => bytes.length - at > 16,
	};
}

/** One record a line, as the format has it: a wrong count is then found where it first matters. */
function textSource(bytes: Uint8Array, { dataAt, lines }: PlyHeader): PlySource {
	const words = new Words(bytes, dataAt);
	words.line = lines + 1;
	/** the first word of the record has been found, not yet taken */
	let waiting = false;
	return {
		text: true,
		begin() {
			if (!words.nextAnywhere()) {
				throw new ScanFault('truncated', 'It ends before all the data that its header announces.');
			}
			waiting = true;
		},
		value() {
			if (!waiting && !words.next()) {
				throw new ScanFault(
					words.at >= bytes.length ? 'truncated' : 'count-lies',
					`Line ${words.line} has fewer numbers than its header announces.`,
				);
			}
			waiting = false;
			const value = words.number();
			if (!Number.isNaN(value)) return value;
			if (/^[+-]?(nan|inf)/i.test(words.text())) return NaN;
			throw new ScanFault(
				'not-a-number',
				`Line ${words.line}: "${words.text().slice(0, 40)}" is not a number.`,
			);
		},
		finish() {
			if (words.next()) {
				throw new ScanFault(
					'count-lies',
					`Line ${words.line} has more numbers than its header announces: one of its counts is wrong.`,
				);
			}
		},
		left: () => bytes.length - words.at,
		least: () => 2, // a digit and a space or line end
		place: () => `line ${words.line}`,
		more: () => words.nextAnywhere(),
	};
}
