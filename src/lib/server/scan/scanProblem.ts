import type { ScanFaultCode } from '../../content/messages/codes';

/** Why a scan could not be read, in words for whoever copied the file. */
export interface ScanProblem {
	code: ScanProblemCode;
	/** what was found, one or two plain sentences */
	message: string;
	/** what to do */
	remedy: string;
}

const AGAIN = 'Copy it again from where it was made, or save it again from the program that made it.';

/** The usual remedy for each code; a message may come with a better one. */
const REMEDIES = {
	empty: 'Copy it again from where it was made.',
	truncated: AGAIN,
	'not-a-mesh': 'Check that this is the scan itself, saved as GLB, STL, PLY or OBJ.',
	'unknown-format': 'Save the scan as GLB, STL, PLY or OBJ, and keep the ending that the program gives it.',
	'unit-missing': 'Say which unit its numbers are in, for example --units mm; ask whoever made the scan.',
	'count-lies': AGAIN,
	damaged: AGAIN,
	'not-a-number': 'Repair the surface in the program that made the scan, and save it again.',
	'index-out-of-range': 'Repair the surface in the program that made the scan, and save it again.',
	'no-triangles': 'Make a surface (a mesh) of it in the program that made the scan, and save that.',
	'no-area': 'Check the export settings of the program that made the scan, and save it again.',
	'loose-triangles': 'Join (weld) the surface in the program that made the scan, and save it again.',
	'too-large': 'Save the scan with fewer triangles; half a million show every detail of a tooth.',
	'compressed-unreadable': 'Save it again without compression, or as STL.',
	'feature-unknown': 'Save it again as a plain GLB without extensions, or as STL.',
	'nested-too-deep': 'Save it again as one plain mesh, for example as STL.',
	'external-file-missing':
		'Copy that file into the same folder, or save the scan as GLB, which holds everything.',
} as const satisfies Readonly<Record<ScanFaultCode, string>>;

export type ScanProblemCode = ScanFaultCode;

/** Puts a problem together; `message` begins with a capital and ends with a full stop. */
export function scanProblem(
	code: ScanProblemCode,
	message: string,
	remedy: string = REMEDIES[code],
): ScanProblem {
	return { code, message, remedy };
}

/** Carries a problem out of the depths of a reader; `readScan` turns it into its result. */
export class ScanFault extends Error {
	readonly problem: ScanProblem;
	constructor(code: ScanProblemCode, message: string, remedy?: string) {
		super(message);
		this.problem = scanProblem(code, message, remedy);
	}
}
