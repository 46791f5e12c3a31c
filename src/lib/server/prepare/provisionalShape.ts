import { readFile, stat } from 'node:fs/promises';
import type { Preservation, ProvisionalShape } from '../../content/exhibit';
import type { FileFrame } from '../../content/fileFrame';
import type { MeasureProblem } from '../../domain/measure/crownMeasures';
import { bounds } from '../../domain/mesh/bounds';
import { orient } from '../../domain/mesh/orient';
import { weld } from '../../domain/mesh/weld';
import { vec3, type Vec3 } from '../../domain/vec3';
import type { Scan } from '../scan/readScan';
import { shapeFiles } from '../shapeFiles';
import { writeAtomically } from '../writeAtomically';
import { closeSmallHoles } from './closeSmallHoles';
import { paintedSurface } from './paintedSurface';
import { paintPicture, pictureFrame } from './paintPicture';
import { prepareLevels } from './prepareLevels';
import type { ReportStage, ShapeJob } from './shapeJob';
import { writeGlb } from './writeGlb';

/** Problems of measuring that marks on the crown can mend. */
const MENDED_BY_MARKS: ReadonlySet<MeasureProblem['code']> = new Set(['no-base', 'no-height']);
export const needsMarks = ({ code }: MeasureProblem): boolean => MENDED_BY_MARKS.has(code);

interface Provisional {
	shape: ProvisionalShape;
	problem: MeasureProblem;
}

/**
 * Prepares a scan that cannot be measured, so that its crown can be marked at the desk: along the file's own axes, the
 * longest upright, without measures. Visitors never see it. What was made is left beside the place of the whole shape.
 */
export async function provisionalShape(
	job: ShapeJob,
	scan: Scan,
	plain: boolean,
	problem: MeasureProblem,
	report: ReportStage,
): Promise<ProvisionalShape> {
	const files = shapeFiles(job.dataDir, job.hash);
	const painted = plain ? null : paintedSurface(scan);
	const found = painted?.mesh ?? weld(scan.mesh);
	const frame = uprightFrame(found);
	report('simplifying');
	const mesh = closeSmallHoles(orient(found, frame.rows, frame.offset));
	const levels = await prepareLevels(mesh, () => report('baking'), painted?.colours);
	report('writing');
	const [full] = levels;
	const box = bounds(full);
	const moved = vec3.subtract(frame.offset, turned(frame, scan.origin_mm));
	const shape: ProvisionalShape = {
		hash: job.hash,
		triangles: full.indices.length / 3,
		bounds: { min: [...box.min], max: [...box.max] },
		picture: pictureFrame(full),
		fileFrame: { rows: frame.rows, offset: moved },
	};
	await writeAtomically(files.glb, await writeGlb(levels));
	for (const preservation of job.preservations)
		await writeAtomically(files.picture(preservation), await paintPicture(full, preservation));
	const made: Provisional = { shape, problem };
	await writeAtomically(files.provisional, JSON.stringify(made));
	return shape;
}

/** What an earlier run left; null where anything is missing or unreadable. */
export async function readProvisional(
	dataDir: string,
	hash: string,
	preservation: Preservation,
): Promise<Provisional | null> {
	const files = shapeFiles(dataDir, hash);
	try {
		const [text] = await Promise.all([
			readFile(files.provisional, 'utf8'),
			stat(files.glb),
			stat(files.picture(preservation)),
		]);
		const made = JSON.parse(text) as Provisional;
		return made.shape.hash === hash ? made : null;
	} catch {
		return null;
	}
}

/** The longest side upright, the lowest point at height 0, the middle over the origin. */
function uprightFrame(mesh: Parameters<typeof bounds>[0]): FileFrame {
	const { min, max } = bounds(mesh);
	const sides = max.map((high, axis) => high - min[axis]);
	const up = sides.indexOf(Math.max(...sides));
	const unit = (axis: number): Vec3 => [
		axis % 3 === 0 ? 1 : 0,
		axis % 3 === 1 ? 1 : 0,
		axis % 3 === 2 ? 1 : 0,
	];
	// in this order the axes stay right-handed
	const frame = { rows: [unit(up + 2), unit(up), unit(up + 1)] as [Vec3, Vec3, Vec3] };
	const middle = vec3.scale(vec3.add(min, max), 0.5);
	const [x, , z] = turned(frame, middle);
	return { ...frame, offset: [-x, -min[up], -z] };
}

const turned = ({ rows: [x, y, z] }: Pick<FileFrame, 'rows'>, point: Vec3): Vec3 => [
	vec3.dot(x, point),
	vec3.dot(y, point),
	vec3.dot(z, point),
];
