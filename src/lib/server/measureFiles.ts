/**
 * Measures scans and prints what was found: `measureFiles.ts FILE... [--units mm] [--json] [--svg DIR]`.
 * Exit code 0 when every file was measured, 1 when any could not be, 2 when it was called wrongly.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { basename, extname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { measureFile, type FileMeasures } from './measureFile';
import { measureReport } from './measureReport';
import { MM_PER_UNIT, type ScanUnits } from './scan/readScan';

const UNITS = Object.keys(MM_PER_UNIT) as ScanUnits[];
const USAGE = `Usage: npm run measure -- FILE... [--units ${UNITS.join('|')}] [--json] [--svg DIR]`;

export interface MeasureRequest {
	files: string[];
	units?: ScanUnits;
	json: boolean;
	/** folder for line drawings */
	svg?: string;
}

/** What the arguments ask for, or words why they cannot be followed. */
export function readArguments(args: readonly string[]): MeasureRequest | string {
	const request: MeasureRequest = { files: [], json: false };
	for (let i = 0; i < args.length; i++) {
		const [name, joined] = args[i].startsWith('--') ? args[i].split(/=(.*)/s) : [args[i]];
		if (name === '--') {
			request.files.push(...args.slice(i + 1));
			break;
		}
		if (name === '--json' && joined === undefined) request.json = true;
		else if (name === '--units' || name === '--svg') {
			const value = joined ?? args[++i];
			if (value === undefined || value === '' || value.startsWith('--'))
				return `${name} needs a value after it.`;
			if (name === '--svg') request.svg = value;
			else if (!UNITS.includes(value as ScanUnits)) return `"${value}" is not one of ${UNITS.join(', ')}.`;
			else request.units = value as ScanUnits;
		} else if (name.startsWith('-')) return `"${args[i]}" is not known.`;
		else request.files.push(name);
	}
	return request.files.length === 0 ? 'Name at least one file.' : request;
}

/** Names for the drawings of files: theirs, with a number where two are alike. */
export function drawingNames(files: readonly string[]): string[] {
	const seen = new Map<string, number>();
	return files.map((file) => {
		const name = basename(file, extname(file));
		const before = seen.get(name) ?? 0;
		seen.set(name, before + 1);
		return before === 0 ? `${name}.svg` : `${name}-${before + 1}.svg`;
	});
}

/** Where the command writes: results to `out`, words on how to call it to `err`. */
export interface Streams {
	out: (text: string) => void;
	err: (text: string) => void;
}

/** The whole command; relative names are meant from the folder `from`. Gives the exit code. */
export async function measureFiles(
	args: readonly string[],
	from: string,
	{ out, err }: Streams,
): Promise<number> {
	const request = readArguments(args);
	if (typeof request === 'string') {
		err(`${request}\n${USAGE}`);
		return 2;
	}
	const folder = request.svg === undefined ? null : resolve(from, request.svg);
	if (folder) {
		const made = await mkdir(folder, { recursive: true }).then(
			() => true,
			() => false,
		);
		if (!made) {
			err(`The folder ${folder} cannot be made.\n${USAGE}`);
			return 2;
		}
	}
	const names = drawingNames(request.files);
	const results: FileMeasures[] = [];
	for (const [i, file] of request.files.entries()) {
		const { result, svg } = await measureFile(resolve(from, file), file, request.units, folder !== null);
		results.push(result);
		if (folder && svg !== null) await writeFile(join(folder, names[i]), svg);
	}
	out(request.json ? JSON.stringify(results, null, '\t') : measureReport(results));
	return results.some((result) => 'error' in result) ? 1 : 0;
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
	// output to a pipe must be written out before the end, so no process.exit
	// npm changes to the project's folder; a relative name is meant from where the command was typed
	const from = process.env.MEASURE_FROM ?? process.cwd();
	process.exitCode = await measureFiles(process.argv.slice(2), from, {
		out: console.log,
		err: console.error,
	});
}
