import type { TriMesh } from '../../domain/mesh/triMesh';
import { fail, ok, type Result } from '../../domain/result';
import type { Vec3 } from '../../domain/vec3';
import { finishMesh } from './finishMesh';
import type { Sibling } from './gltfBuffers';
import type { OpenPicture } from './gltfSkins';
import { LIMITS } from './limits';
import type { Paint } from './paint';
import type { RawMesh, ScanWarning } from './rawMesh';
import { readGltf } from './readGltf';
import { readObj } from './readObj';
import { readPly } from './readPly';
import { readStl } from './readStl';
import { ScanFault, scanProblem, type ScanProblem } from './scanProblem';
import { sniff } from './sniff';

export type { ScanProblem } from './scanProblem';

export type ScanUnits = 'um' | 'mm' | 'cm' | 'm' | 'in';

/** Millimetres in one unit of the file. The inch is exactly 25.4 mm (international yard and pound agreement, 1959). */
export const MM_PER_UNIT: Readonly<Record<ScanUnits, number>> = {
	um: 0.001,
	mm: 1,
	cm: 10,
	m: 1000,
	in: 25.4,
};

/** Formats by the ending of the file's name. */
export const SCAN_FORMATS = ['glb', 'gltf', 'stl', 'ply', 'obj'] as const;
export type ScanFormat = (typeof SCAN_FORMATS)[number];

export interface Scan {
	/** mm, facing outwards, not welded */
	mesh: TriMesh;
	/** add to the mesh's positions to come back to the file's own frame, mm; 0, 0, 0 unless `recentre` was asked for */
	origin_mm: Vec3;
	format: ScanFormat;
	/** the unit in which the file's numbers were read */
	units: ScanUnits;
	/** red, green, blue per corner, 0 .. 255, when the file has them for all */
	colours?: Uint8Array;
	/** the pictures on its surface, when they were asked for */
	paint?: Paint;
	warnings: ScanWarning[];
}

export interface ReadScanOptions {
	/** fetches a file that a glTF names, from the same folder; null when it is not there */
	sibling?: Sibling;
	/** a mesh that lies very far from its file's origin may be moved to it, so as to keep its fine digits; default no */
	recentre?: boolean;
	/** opens the pictures that colour a glTF's surface; left out, they are not read */
	openPicture?: OpenPicture;
}

/** The format that a file's name promises; null for none of ours. */
export function scanFormat(file: string): ScanFormat | null {
	const ending = file.slice(file.lastIndexOf('.') + 1).toLowerCase();
	return SCAN_FORMATS.find((format) => format === ending) ?? null;
}

/**
 * Reads a scan's triangles into millimetres, in the file's own frame, not welded. `file` is needed for its ending only.
 * Polygons are cut into triangles and a glTF's objects put in their places. Pictures on the surface are read
 * where `openPicture` is given; one that cannot be read is a warning, and never stands in the way of the surface.
 *
 * `units` is the unit of the file's numbers. GLB and glTF are in metres by their standard when it is left out; for
 * the other formats, which carry no unit, leaving it out is a problem: it is never guessed.
 *
 * Never throws for anything in the file, and asks for no more memory than LIMITS allow. Nothing of Node is used but
 * by the Draco unpacker.
 */
export async function readScan(
	bytes: Uint8Array,
	file: string,
	units?: ScanUnits,
	options: ReadScanOptions = {},
): Promise<Result<Scan, ScanProblem>> {
	try {
		const format = checkedFormat(bytes, file);
		const unit = units ?? (format === 'glb' || format === 'gltf' ? 'm' : null);
		if (!unit) {
			throw new ScanFault(
				'unit-missing',
				`${format.toUpperCase()} files do not say in which unit their numbers are.`,
			);
		}
		const raw = await readRaw(bytes, format, options);
		const { mesh, origin_mm, warnings } = finishMesh(raw, MM_PER_UNIT[unit], options.recentre ?? false);
		const colours = raw.colours ? { colours: raw.colours } : {};
		const paint = raw.paint ? { paint: raw.paint } : {};
		return ok({ mesh, origin_mm, format, units: unit, ...colours, ...paint, warnings });
	} catch (cause) {
		if (cause instanceof ScanFault) return fail(cause.problem);
		if (cause instanceof RangeError && /allocation|Invalid (typed )?array length/i.test(cause.message)) {
			// the computer has less to give than LIMITS suppose
			return fail(scanProblem('too-large', 'It is too large for the memory of this computer.'));
		}
		throw cause;
	}
}

function checkedFormat(bytes: Uint8Array, file: string): ScanFormat {
	const format = scanFormat(file);
	if (!format) {
		const dot = file.lastIndexOf('.');
		throw new ScanFault(
			'unknown-format',
			dot < 0
				? 'Its name has no ending that says what it is.'
				: `Files ending in "${file.slice(dot, dot + 20)}" cannot be read.`,
		);
	}
	if (bytes.length === 0) throw new ScanFault('empty', 'It is empty: it has no bytes at all.');
	if (bytes.length > LIMITS.fileBytes) {
		throw new ScanFault(
			'too-large',
			`It has ${Math.round(bytes.length / 1e6)} million bytes; ${LIMITS.fileBytes / 1e6} million is the most that can be read.`,
		);
	}
	const found = sniff(bytes);
	if (!found) return format;
	if (found.kind === 'foreign') {
		throw new ScanFault(
			'not-a-mesh',
			`Its name says ${format.toUpperCase()}, but it is ${found.name}.`,
			/archive/.test(found.name) ? 'Unpack it, and use the scan that is inside.' : undefined,
		);
	}
	const own = found.kind === 'stl-text' ? 'stl' : found.kind;
	if (own !== format) {
		throw new ScanFault(
			'not-a-mesh',
			`Its name says ${format.toUpperCase()}, but it is ${found.name}.`,
			own === 'gltf' ? undefined : `Give it a name that ends in .${own}.`,
		);
	}
	return format;
}

async function readRaw(bytes: Uint8Array, format: ScanFormat, options: ReadScanOptions): Promise<RawMesh> {
	switch (format) {
		case 'stl':
			return readStl(bytes);
		case 'ply':
			return readPly(bytes);
		case 'obj':
			return readObj(bytes);
		default:
			return readGltf(bytes, format, options.sibling, options.openPicture);
	}
}
