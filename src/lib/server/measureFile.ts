import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { readYaml } from '../content/readYaml';
import { scanSchema } from '../content/schemas';
import type { CrownMarks, CrownMeasures } from '../domain/measure/crownMeasures';
import { lineDrawing } from '../domain/mesh/lineDrawing';
import { lineDrawingSvg } from '../domain/mesh/lineDrawingSvg';
import { vec3, type Vec3 } from '../domain/vec3';
import { closeSmallHoles } from './prepare/closeSmallHoles';
import { measureScan, type MeasuredScan } from './prepare/measureScan';
import { turnToToothFrame } from './prepare/turnToToothFrame';
import { LIMITS } from './scan/limits';
import { readScan, scanFormat, type ScanFormat, type ScanUnits } from './scan/readScan';

export interface MeasureError {
	code: string;
	message: string;
	remedy: string;
}

interface FileFacts {
	/** as given */
	file: string;
	format: ScanFormat | null;
	/** the unit in which the file's numbers were read; null where it never came to that */
	units: ScanUnits | null;
}

/** What is printed for one file: its measures, or why there are none. */
export type FileMeasures = (FileFacts & CrownMeasures) | (FileFacts & { error: MeasureError });

const DRAWING_PX = [1200, 900] as const;

/**
 * Reads and measures one file. Points stay in the file's own frame, in mm. The crown's points come from a
 * specimen.yaml beside the file if it marks them. `svg` is the line drawing, where wanted and possible.
 */
export async function measureFile(
	path: string,
	file: string,
	units: ScanUnits | undefined,
	draw: boolean,
): Promise<{ result: FileMeasures; svg: string | null }> {
	const format = scanFormat(file);
	// a GLB's standard says metres, whatever the other files of the call are in
	const standard = format === 'glb' || format === 'gltf';
	const unit = standard ? 'm' : (units ?? null);
	const facts: FileFacts = { file, format, units: unit };
	const failed = (error: MeasureError) => ({ result: { ...facts, error }, svg: null });
	const bytes = await fileBytes(path);
	if (!(bytes instanceof Uint8Array)) return failed(bytes);

	const scan = await readScan(bytes, basename(file), unit ?? undefined, {
		sibling: (name) => siblingBytes(dirname(path), name),
		recentre: true,
	}).catch((cause: unknown) => unforeseen(cause));
	if ('code' in scan) return failed(scan);
	if (!scan.ok) return failed(scan.problem);
	try {
		const measured = measureScan(scan.value, await marksBeside(path));
		if (!measured.ok) {
			const { code, message } = measured.problem;
			return failed({ code, message, remedy: REMEDY });
		}
		const { measures } = measured.value;
		if (standard && units && units !== 'm') {
			measures.warnings.unshift({
				code: 'unit-by-standard',
				message: `${format.toUpperCase()} files are in metres by their standard: --units ${units} was not used for this one.`,
			});
		}
		const svg = draw ? drawing(measured.value, basename(file)) : null;
		return { result: { ...facts, ...finite(inFileFrame(measures, scan.value.origin_mm)) }, svg };
	} catch (cause) {
		return failed(unforeseen(cause));
	}
}

const REMEDY =
	'Check that the file holds one tooth with its crown, and nothing else, and that its unit is right.';

/** Marks of the crown, in the file's own frame, from the specimen.yaml beside a scan, when it is about this file. */
async function marksBeside(path: string): Promise<CrownMarks | undefined> {
	const text = await readFile(join(dirname(path), 'specimen.yaml'), 'utf8').catch(() => null);
	const value = text === null ? null : (readYaml(text).value as { shape?: { scan?: unknown } } | null);
	const scan = scanSchema.safeParse(value?.shape?.scan);
	if (!scan.success || !scan.data.crown || scan.data.file !== basename(path)) return undefined;
	const { apex_mm, baseMesial_mm, baseDistal_mm, labial } = scan.data.crown;
	return {
		apex: apex_mm,
		baseMesial: baseMesial_mm,
		baseDistal: baseDistal_mm,
		...(labial ? { labial } : {}),
	};
}

function inFileFrame(measures: CrownMeasures, origin: Vec3): CrownMeasures {
	if (origin.every((value) => value === 0)) return measures;
	return {
		...measures,
		apex: vec3.add(measures.apex, origin),
		baseMesial: vec3.add(measures.baseMesial, origin),
		baseDistal: vec3.add(measures.baseDistal, origin),
	};
}

/** A value that came out as no number is said to be missing, not printed as null in silence. */
function finite(measures: CrownMeasures): CrownMeasures {
	// the words are the contract of the command; their data are for the desk
	const warnings: CrownMeasures['warnings'] = measures.warnings.map(({ code, message }) => ({
		code,
		message,
	}));
	const out: Record<string, unknown> = {};
	for (const [key, value] of Object.entries(measures)) {
		const wrong = typeof value === 'number' && !Number.isFinite(value);
		out[key] = wrong ? null : value;
		if (wrong)
			warnings.push({ code: 'no-value', message: `${key} could not be worked out for this surface.` });
	}
	return { ...(out as unknown as CrownMeasures), warnings };
}

function drawing({ mesh, measures, marks }: MeasuredScan, title: string): string {
	const { labial, ...turned } = turnToToothFrame(mesh, measures, marks);
	const { axialHeight_mm } = turned.measures;
	const [width, height] = DRAWING_PX;
	const facts = { axialHeight_mm, ...(labial ? { labial } : {}) };
	return lineDrawingSvg(lineDrawing(closeSmallHoles(turned.mesh), facts), { width, height, title });
}

async function fileBytes(path: string): Promise<Uint8Array | MeasureError> {
	const there = await stat(path).catch(() => null);
	if (!there) {
		return {
			code: 'no-such-file',
			message: 'There is no such file.',
			remedy: 'Check its name and the folder it is in.',
		};
	}
	if (!there.isFile()) {
		return {
			code: 'not-a-file',
			message: 'It is a folder, not a file.',
			remedy: 'Name the scan that is in it.',
		};
	}
	if (there.size > LIMITS.fileBytes) {
		return {
			code: 'too-large',
			message: `It has ${Math.round(there.size / 1e6)} million bytes; ${LIMITS.fileBytes / 1e6} million is the most that can be read.`,
			remedy: 'Save the scan with fewer triangles; half a million show every detail of a tooth.',
		};
	}
	return readFile(path).catch((cause: unknown) => ({
		code: 'not-readable',
		message: `It cannot be opened (${(cause as NodeJS.ErrnoException).code ?? 'no reason given'}).`,
		remedy: 'Check that you have the right to read it.',
	}));
}

async function siblingBytes(folder: string, name: string): Promise<Uint8Array | null> {
	const path = join(folder, name);
	const there = await stat(path).catch(() => null);
	return there?.isFile() && there.size <= LIMITS.fileBytes ? readFile(path).catch(() => null) : null;
}

/** A fault of ours: said plainly, and the next file is measured all the same. */
function unforeseen(cause: unknown): MeasureError {
	return {
		code: 'failed',
		message: `It could not be measured (${cause instanceof Error ? cause.message : String(cause)}).`,
		remedy: 'Save the scan again from the program that made it, as STL or GLB, with fewer triangles.',
	};
}
