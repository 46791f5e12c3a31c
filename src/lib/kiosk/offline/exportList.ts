/** Name of the list in an export. */
export const LIST = 'export.json';
/** Says that a folder was written by `npm run export`. */
export const KIND = 'tooth-table export 1';

export interface ExportedFile {
	/** from the export's root, with / between folders */
	path: string;
	bytes: number;
	/** hexadecimal */
	sha256: string;
}

/** What `export.json` holds: every file of the export but itself. */
export interface ExportList {
	kind: typeof KIND;
	/** hash over all files: two exports of the same version are the same */
	version: string;
	/** hash of the exhibit */
	exhibit: string;
	/** version of the program */
	code: string;
	files: ExportedFile[];
}

/** Reads a list; null where it is none. A path that could lead out of the export makes it none. */
export function readExportList(text: string): ExportList | null {
	let read: Partial<ExportList> | null;
	try {
		read = JSON.parse(text) as Partial<ExportList> | null;
	} catch {
		return null;
	}
	if (read?.kind !== KIND || !Array.isArray(read.files)) return null;
	const words = [read.version, read.exhibit, read.code];
	if (!words.every((word) => typeof word === 'string' && word !== '')) return null;
	const good = read.files.every(
		(file: Partial<ExportedFile> | null) =>
			typeof file?.path === 'string' &&
			!/^\/|^[a-z]+:|(^|\/)\.\.?(\/|$)|[\\?#]/i.test(file.path) &&
			typeof file.bytes === 'number' &&
			/^[0-9a-f]{64}$/.test(file.sha256 ?? ''),
	);
	return good ? (read as ExportList) : null;
}
