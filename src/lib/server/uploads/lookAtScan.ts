import type { ScanLook } from '../../content/scanUpload';
import { bounds } from '../../domain/mesh/bounds';
import { fail, ok, type Result } from '../../domain/result';
import { measureScan } from '../prepare/measureScan';
import { needsMarks } from '../prepare/provisionalShape';
import { sniff } from '../scan/sniff';
import { readScan } from '../scan/readScan';
import { scanFormatOf } from './scanFormatOf';

/** Why a scan is not taken: a message of the content check, by id and data. */
export interface LookProblem {
	id: string;
	data: { scan: string; code: string; found: string; advice: string };
}

/** Longest side, mm, that a scan of unknown unit is brought to before it is measured: that of a large tooth. */
const ASSUMED_mm = 50;

/**
 * Reads an uploaded scan as the exhibit would, and says what it is in the file's own unit. `name` is what its owner calls
 * it; only its ending is ever asked for.
 */
export async function lookAtScan(bytes: Uint8Array, name: string): Promise<Result<ScanLook, LookProblem>> {
	const problem = (family: 'scan' | 'shape', code: string, found: string, advice: string) =>
		fail({ id: `${family}-${code}`, data: { scan: name, code, found, advice } });
	const format = scanFormatOf(bytes, name);
	if (format === null && bytes.length > 0)
		return problem(
			'scan',
			'unknown-format',
			`By its bytes it is ${sniff(bytes)?.name ?? 'no scan'}.`,
			'Save the scan as GLB, STL, PLY or OBJ.',
		);
	// read as mm, so that numbers stay as they are in the file
	const scan = await readScan(bytes, `scan.${format ?? 'stl'}`, 'mm', { recentre: true });
	if (!scan.ok) return problem('scan', scan.problem.code, scan.problem.message, scan.problem.remedy);
	const { min, max } = bounds(scan.value.mesh);
	const box = [max[0] - min[0], max[1] - min[1], max[2] - min[2]].sort((a, b) => b - a);
	// measuring expects teeth of a likely size
	const scale = ASSUMED_mm / box[0];
	const positions = scan.value.mesh.positions.map((value) => value * scale);
	const measured = measureScan({ ...scan.value, mesh: { ...scan.value.mesh, positions } }, undefined);
	if (!measured.ok && !needsMarks(measured.problem))
		return problem('shape', measured.problem.code, measured.problem.message, 'check-file');
	const measures = measured.ok ? measured.value.measures : null;
	return ok({
		format: format!,
		bytes: bytes.length,
		triangles: scan.value.mesh.indices.length / 3,
		box: box as [number, number, number],
		crown: measures && {
			height: measures.axialHeight_mm / scale,
			baseLength: measures.crownBaseLength_mm / scale,
			baseWidth: measures.crownBaseWidth_mm / scale,
		},
	});
}
