import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { checkContent, problemReport, readArguments } from '../../../src/lib/server/contentCheck';
import { fsReader } from '../../../src/lib/server/fsReader';
import { contentWith, edited, type Overlay } from './validContent';

const made: string[] = [];

/** A cone 20 mm high on a round base 10 mm across, which is enough for a scan that can be measured. */
function cone(units_mm = 1): string {
	const around = 300;
	const rim = (i: number) =>
		`${(5 * Math.cos((2 * Math.PI * i) / around)) / units_mm} ${(5 * Math.sin((2 * Math.PI * i) / around)) / units_mm} 0`;
	const facet = (...corners: string[]) =>
		`facet normal 0 0 0\nouter loop\n${corners.map((corner) => `vertex ${corner}\n`).join('')}endloop\nendfacet\n`;
	const facets = Array.from({ length: around }, (_, i) => [
		facet(rim(i), rim(i + 1), `0 0 ${20 / units_mm}`),
		facet(rim(i + 1), rim(i), '0 0 0'),
	]).flat();
	return `solid cone\n${facets.join('')}endsolid cone\n`;
}
const STL = cone();

/** Writes the valid exhibit with an overlay to a folder of its own. */
function folderWith(overlay: Overlay): string {
	const folder = mkdtempSync(join(tmpdir(), 'content-check-'));
	made.push(folder);
	for (const [path, text] of Object.entries(
		contentWith({ 'specimens/skm-0002/scan.stl': STL, ...overlay }),
	)) {
		mkdirSync(dirname(join(folder, path)), { recursive: true });
		writeFileSync(join(folder, path), text);
	}
	return folder;
}

afterAll(() => made.forEach((folder) => rmSync(folder, { recursive: true })));

const check = (overlay: Overlay) => {
	const folder = folderWith(overlay);
	return checkContent(fsReader(folder), folder);
};

const run = (...args: string[]) =>
	spawnSync(process.execPath, ['node_modules/tsx/dist/cli.mjs', 'src/lib/server/contentCheck.ts', ...args], {
		encoding: 'utf8',
	});

describe('contentCheck', () => {
	it('finds nothing in a valid folder', async () => {
		expect(await check({})).toEqual([]);
	});

	it('finds a facet that takes the crown away, which only making the surface can tell', async () => {
		const facet = 'angle_deg: 20, depth_mm: 1.2, at: 0.8';
		const overlay = edited('specimens/skm-0001/specimen.yaml', facet, 'angle_deg: 85, depth_mm: 30, at: 0.1');
		expect(await check(overlay)).toEqual([
			{
				id: 'no-crown-left',
				severity: 'error',
				file: 'specimens/skm-0001/specimen.yaml',
				line: 24,
				column: 52,
				path: 'shape.model.wear.facets[0].depth_mm',
				data: null,
				message: 'The wear given here takes the whole crown away.',
				remedy:
					'Check the numbers under wear: a smaller depth_mm, or a greater tip_worn_to_mm (the height that is left).',
			},
		]);
	});

	it('finds a scan that cannot be opened', async () => {
		const problems = await check({ 'specimens/skm-0002/scan.stl': 'solid tooth\nendsolid tooth\n' });
		expect(problems.map(({ file, line, column, path }) => ({ file, line, column, path }))).toEqual([
			{ file: 'specimens/skm-0002/specimen.yaml', line: 8, column: 17, path: 'shape.scan.file' },
		]);
		expect(problems[0].message).toContain('scan.stl');
	});

	it('finds a scan whose unit cannot be that of its card, and marks that lie beside it', async () => {
		const scan = 'shape:\n  scan: { file: scan.stl, units: mm }\n';
		const card = edited(
			'specimens/skm-0002/specimen.yaml',
			scan,
			`${scan}declared: { crown_height_mm: 20, base_width_mm: 10 }\n`,
		);
		expect(await check(card)).toEqual([]);
		const [unit, ...more] = await check({ ...card, 'specimens/skm-0002/scan.stl': cone(25.4) });
		expect([unit.id, unit.severity, unit.line, unit.column, more.length]).toEqual([
			'scan-unit',
			'error',
			8,
			34,
			0,
		]);
		expect(unit.remedy).toBe('Write units: in');

		const marked = `shape:
  scan:
    file: scan.stl
    units: mm
    crown: { apex_mm: [0, 0, 20], base_mesial_mm: [-5, 0, 0], base_distal_mm: [5, 4, 0] }
`;
		const problems = await check(edited('specimens/skm-0002/specimen.yaml', scan, marked));
		expect(problems.map(({ id, severity, line, path }) => [id, severity, line, path])).toEqual([
			['mark-off-surface', 'warning', 11, 'shape.scan.crown.base_distal_mm'],
		]);
	});

	it('prints problems by file with the remedy below', async () => {
		const problems = await check({
			...edited('specimens/skm-0001/specimen.yaml', 'taper: bullet', 'taper: bulet'),
			...edited('ui/fr.yaml', 'start_title: Que dit une dent ?\n', ''),
		});
		expect(problemReport(problems)).toBe(
			[
				'specimens/skm-0001/specimen.yaml:16:12  error  "bulet" is not possible for taper: it is needle, cone, bullet or dome.',
				'    Did you mean taper: bullet?',
				'',
				'ui/fr.yaml:1:1  warning  "start_title" is not translated; visitors see the English text.',
				'    Add a line start_title: with the translation of "What can a tooth tell?"',
				'',
				'1 error, 1 warning. What has an error is not shown until it is put right.',
			].join('\n'),
		);
		expect(problemReport([])).toBe('No problems found.');
		expect(problemReport(problems, 'fr')).toBe(
			[
				'specimens/skm-0001/specimen.yaml:16:12  erreur  «\u202Fbulet\u202F» n’est pas possible pour taper\u202F: c’est needle, cone, bullet ou dome.',
				'    Vouliez-vous écrire taper: bullet\u202F?',
				'',
				'ui/fr.yaml:1:1  conseil  «\u202Fstart_title\u202F» n’est pas traduit\u202F; les visiteurs voient le texte en anglais.',
				'    Ajoutez une ligne start_title: avec la traduction de «\u202FWhat can a tooth tell?\u202F»',
				'',
				'1 erreur, 1 conseil. Ce qui a une erreur n’est pas montré avant d’être corrigé.',
			].join('\n'),
		);
		expect(problemReport(problems, 'es')).toMatch(/\n1 error, 1 consejo\. Lo que tiene un error/);
	});

	it('takes a folder and --json in any order, and nothing else', () => {
		expect(readArguments([])).toEqual({ folder: undefined, json: false, language: 'en' });
		expect(readArguments(['--json', 'here'])).toEqual({ folder: 'here', json: true, language: 'en' });
		expect(readArguments(['here', '--json'])).toEqual({ folder: 'here', json: true, language: 'en' });
		expect(readArguments(['a', 'b'])).toBe('One folder can be checked at a time.');
		expect(readArguments(['--jsn'])).toBe('"--jsn" is not known.');
		expect(readArguments(['--lang', 'fr', 'here'])).toEqual({ folder: 'here', json: false, language: 'fr' });
		expect(readArguments(['--lang=es'])).toEqual({ folder: undefined, json: false, language: 'es' });
		expect(readArguments(['--lang', 'de'])).toBe('--lang "de": messages are in en, fr, es.');
		expect(readArguments(['--lang'])).toBe('--lang "": messages are in en, fr, es.');
	});

	it('ends with 1 when there is an error, and prints one list and nothing else', () => {
		const folder = folderWith(edited('specimens/skm-0001/specimen.yaml', 'part: shed-crown', 'part: tooth'));
		const { status, stdout, stderr } = run(folder, '--json');
		expect(stderr).toBe('');
		expect(JSON.parse(stdout)).toEqual([
			{
				id: 'wrong-choice',
				severity: 'error',
				file: 'specimens/skm-0001/specimen.yaml',
				line: 3,
				column: 7,
				path: 'part',
				message:
					'"tooth" is not possible for part: it is crown, shed-crown, rooted-tooth, germ or jaw-piece.',
				remedy: 'Write part: shed-crown',
			},
		]);
		expect(status).toBe(1);
	});

	it('ends with 0 when there are warnings at most', () => {
		const { status, stdout } = run(folderWith({ 'glossary/fr.yaml': null }));
		expect(stdout).toMatch(/\n0 errors, 1 warning\.\n$/);
		expect(status).toBe(0);
	});

	it('ends with 2 when there is no such folder, or the arguments are wrong', () => {
		const none = run(join(tmpdir(), 'no-such-content-folder'), '--json');
		expect([none.status, none.stdout]).toEqual([2, '']);
		expect(none.stderr).toMatch(/^There is no folder .*no-such-content-folder\nUsage: npm run content:check/);
		const wrong = run('--jsn');
		expect([wrong.status, wrong.stdout]).toEqual([2, '']);
	});
});
