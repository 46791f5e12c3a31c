import { vertexCount, type TriMesh } from '../../domain/mesh/triMesh';
import { fail, ok, type Result } from '../../domain/result';
import { readGltf } from './readGltf';
import { readObj } from './readObj';
import { readPly } from './readPly';
import { readStl } from './readStl';

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

export interface ScanProblem {
	code:
		| 'unknown-format' // the name's ending is none of SCAN_FORMATS
		| 'unreadable' // the file is damaged or not what its name says; `detail` is the reader's own word
		| 'compressed' // packed in a way this program cannot undo; `detail` names it
		| 'no-triangles' // points or lines only, or nothing
		| 'not-a-number'; // a corner has no finite position
	detail?: string;
}

/** Corners as the file has them: three numbers a corner, triangles by number or, without `indices`, in order. */
export interface RawTriangles {
	positions: Float32Array;
	indices: Uint32Array | null;
}

/** The format that a file's name promises; null for none of ours. */
export function scanFormat(file: string): ScanFormat | null {
	const ending = file.slice(file.lastIndexOf('.') + 1).toLowerCase();
	return SCAN_FORMATS.find((format) => format === ending) ?? null;
}

/**
 * Reads a scan's triangles into millimetres, in the file's own frame, not welded. `file` is needed
 * for its ending only. A GLB's node transforms are applied; colours and textures are left out.
 */
export async function readScan(
	bytes: Uint8Array,
	file: string,
	units: ScanUnits,
): Promise<Result<TriMesh, ScanProblem>> {
	const format = scanFormat(file);
	if (!format) return fail({ code: 'unknown-format', detail: file.slice(file.lastIndexOf('.')) });
	let raw: RawTriangles;
	try {
		if (format === 'stl') raw = readStl(bytes);
		else if (format === 'ply') raw = readPly(bytes);
		else if (format === 'obj') raw = readObj(bytes);
		else {
			const result = await readGltf(bytes, format);
			if (!result.ok) return result;
			raw = result.value;
		}
	} catch (cause) {
		return fail({ code: 'unreadable', detail: cause instanceof Error ? cause.message : String(cause) });
	}
	const mesh = toMesh(raw, MM_PER_UNIT[units]);
	if (mesh.indices.length === 0) return fail({ code: 'no-triangles' });
	if (!mesh.positions.every(Number.isFinite)) return fail({ code: 'not-a-number' });
	const corners = vertexCount(mesh);
	if (!mesh.indices.every((index) => index < corners)) {
		return fail({ code: 'unreadable', detail: 'a triangle names a corner that is not there' });
	}
	return ok(mesh);
}

function toMesh({ positions, indices }: RawTriangles, mmPerUnit: number): TriMesh {
	const scaled = mmPerUnit === 1 ? positions : positions.map((value) => value * mmPerUnit);
	if (indices) return { positions: scaled, indices };
	const count = Math.floor(positions.length / 9) * 3;
	return { positions: scaled, indices: Uint32Array.from({ length: count }, (_, i) => i) };
}
