/**
 * Checks a content folder and prints every problem: `contentCheck.ts [DIR] [--json] [--lang fr]`.
 * Exit code 1 if there is any error, 0 if not, 2 when it was called wrongly or there is no such folder.
 */
import { readFile, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { withFile } from '../content/contentFiles';
import type { ContentReader, SpecimenDraft } from '../content/draft';
import { FILE_START } from '../content/finding';
import { loadContent } from '../content/loadContent';
import { measureFindings } from '../content/measureFindings';
import type { Problem } from '../content/problem';
import { reportWords } from '../content/messages/report';
import { WORDED, wordProblem } from '../content/wordProblem';
import type { CrownMeasures, MeasureProblem } from '../domain/measure/crownMeasures';
import { measureCrown } from '../domain/measure/measureCrown';
import { fail, ok, type Result } from '../domain/result';
import { sculpt } from '../domain/tooth/sculpt';
import { fsReader } from './fsReader';
import { measureScan } from './prepare/measureScan';
import type { ShapeFailure } from './prepare/shapeJob';
import { readPicture } from './scan/readPicture';
import { readScan } from './scan/readScan';
import { placesIn, shapeProblem } from './shapeProblem';

const USAGE = `Usage: npm run content:check -- [DIR] [--json] [--lang ${WORDED.join('|')}]`;

/**
 * Every problem of a content folder: those of its texts, and those that only making a model or opening a scan can
 * tell. `folder` is where scans are read from.
 */
export async function checkContent(reader: ContentReader, folder: string): Promise<Problem[]> {
	const { draft, problems } = await loadContent(reader);
	for (const specimen of draft?.specimens ?? []) {
		const measured = await measuredShape(specimen, folder);
		const file = `specimens/${specimen.id}/specimen.yaml`;
		if (measured.ok && measureFindings(specimen, measured.value, () => FILE_START).length === 0) continue;
		const yaml = await reader.read(file).catch(() => null);
		if (measured.ok) {
			const found = measureFindings(specimen, measured.value, placesIn(yaml));
			problems.push(...found.map((one) => withFile(one, file)));
		} else problems.push(shapeProblem(specimen, measured.problem, yaml));
	}
	return problems.sort(
		(a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) || a.line - b.line || a.column - b.column,
	);
}

async function measuredShape(
	{ id, shape }: SpecimenDraft,
	folder: string,
): Promise<Result<CrownMeasures, ShapeFailure>> {
	let measured: Result<CrownMeasures, MeasureProblem>;
	if (shape.kind === 'model') {
		const made = sculpt(shape.form, { detail: 'draft' });
		if (!made.ok) return fail({ of: 'form', problem: made.problem });
		measured = measureCrown(made.value.mesh, { marks: made.value.marks });
	} else {
		const bytes = await readFile(join(folder, 'specimens', id, shape.file)).catch(() => null);
		if (!bytes) return fail({ of: 'changed' });
		const pictures = shape.colour === 'plain' ? {} : { openPicture: readPicture };
		const scan = await readScan(bytes, shape.file, shape.units, { recentre: true, ...pictures });
		if (!scan.ok) return fail({ of: 'scan', problem: scan.problem });
		const found = measureScan(scan.value, shape.crown);
		measured = found.ok ? ok(found.value.measures) : found;
	}
	return measured.ok ? measured : fail({ of: 'measure', problem: measured.problem });
}

/** Problems for reading: grouped by file, one line each, with the remedy below it. */
export function problemReport(problems: readonly Problem[], language = 'en'): string {
	const words = reportWords(language);
	const lines: string[] = [];
	let file: string | null = null;
	for (const problem of problems) {
		if (file !== null && file !== problem.file) lines.push('');
		file = problem.file;
		const place = `${problem.file || words.folder}:${problem.line}:${problem.column}`;
		const { message, remedy } = wordProblem(problem, language);
		lines.push(`${place}  ${words[problem.severity]}  ${message}`, `    ${remedy}`);
	}
	const errors = problems.filter(({ severity }) => severity === 'error').length;
	if (lines.length > 0) lines.push('');
	lines.push(problems.length === 0 ? words.none : words.total(errors, problems.length - errors));
	return lines.join('\n');
}

/** Problems for programs: one list, with the keys that are fixed for the command. */
export const problemJson = (problems: readonly Problem[], language = 'en'): string =>
	JSON.stringify(
		problems.map(({ data, ...fixed }) => ({ ...fixed, ...wordProblem({ ...fixed, data }, language) })),
		null,
		'\t',
	);

/** What the arguments ask for, or words why they cannot be followed. */
export function readArguments(
	args: readonly string[],
): { folder?: string; json: boolean; language: string } | string {
	const folders: string[] = [];
	let json = false;
	let language = 'en';
	for (let i = 0; i < args.length; i++) {
		const [name, joined] = args[i].split(/=(.*)/s);
		if (name === '--lang') {
			language = joined ?? args[++i] ?? '';
			if (!WORDED.includes(language)) return `--lang "${language}": messages are in ${WORDED.join(', ')}.`;
		} else if (args[i] === '--json') json = true;
		else if (args[i].startsWith('-')) return `"${args[i]}" is not known.`;
		else folders.push(args[i]);
	}
	if (folders.length > 1) return 'One folder can be checked at a time.';
	return { folder: folders[0], json, language };
}

async function main(args: readonly string[]): Promise<number> {
	const asked = readArguments(args);
	if (typeof asked === 'string') {
		console.error(`${asked}\n${USAGE}`);
		return 2;
	}
	const folder = resolve(asked.folder ?? process.env.CONTENT_DIR ?? 'content');
	const isFolder = await stat(folder).then(
		(facts) => facts.isDirectory(),
		() => false,
	);
	if (!isFolder) {
		console.error(`There is no folder ${folder}\n${USAGE}`);
		return 2;
	}
	const problems = await checkContent(fsReader(folder), folder);
	console.log((asked.json ? problemJson : problemReport)(problems, asked.language));
	return problems.some(({ severity }) => severity === 'error') ? 1 : 0;
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
	// output to a pipe must be written out before the end, so no process.exit
	process.exitCode = await main(process.argv.slice(2));
}
