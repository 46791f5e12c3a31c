import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawingNames, measureFiles, readArguments } from '../../../src/lib/server/measureFiles';
import { measureReport } from '../../../src/lib/server/measureReport';
import { ellipticCone, torus } from '../mesh/shapes';
import { glb, gltfDocument } from './gltfWriters';
import { asPolygons, obj, ply, stlBinary, text } from './writers';

const ROOT = path.resolve(__dirname, '../../..');
const cone = ellipticCone(5, 4, [1, 24, 0], 120, 60);
let folder = '';

beforeAll(async () => {
	folder = await mkdtemp(path.join(tmpdir(), 'measure-'));
	const small = { ...cone, positions: cone.positions.map((v) => v / 1000) };
	const put = (name: string, bytes: Uint8Array) => writeFile(path.join(folder, name), bytes);
	await put('tooth.stl', stlBinary(cone));
	await put('tooth.ply', ply(asPolygons(cone), { encoding: 'binary_big_endian' }));
	await put('tooth.obj', text(obj(asPolygons(cone))));
	await put('tooth.glb', await glb(gltfDocument([{ mesh: small }])));
	await put('broken.stl', stlBinary(cone).slice(0, 5000));
	await put('rings.stl', stlBinary(torus(20, 1.5, 96, 24)));
	await put('notes.txt', text('nothing'));
	await mkdir(path.join(folder, 'specimen'));
	await put('specimen/scan.stl', stlBinary(cone));
	await put(
		'specimen/specimen.yaml',
		text(
			'accession: SKM 1\nshape:\n  scan:\n    file: scan.stl\n    units: mm\n    crown:\n' +
				'      apex_mm: [1, 24, 0]\n      base_mesial_mm: [-4.5, 12, 0]\n      base_distal_mm: [3, 12, 0]\n',
		),
	);
});

afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs the command within this process, from the folder of the scans. */
async function run(...args: string[]): Promise<{ status: number; stdout: string; stderr: string }> {
	const [out, err]: string[][] = [[], []];
	const streams = { out: (text: string) => void out.push(text), err: (text: string) => void err.push(text) };
	const status = await measureFiles(args, folder, streams);
	return { status, stdout: out.join('\n'), stderr: err.join('\n') };
}

/** Runs the command as npm does. */
function runScript(...args: string[]) {
	return spawnSync(process.execPath, [path.join(ROOT, 'src/scripts/measure.mjs'), ...args], {
		cwd: ROOT,
		env: { ...process.env, INIT_CWD: folder },
		encoding: 'utf8',
	});
}

type Entry = Record<string, unknown> & {
	error?: { code: string; message: string; remedy: string };
	warnings?: { code: string; message: string }[];
};
const entries = (stdout: string): Entry[] => JSON.parse(stdout) as Entry[];

describe('readArguments', () => {
	it('takes files, a unit, and where drawings go, in any order', () => {
		expect(readArguments(['a.stl', '--units', 'mm', 'b.ply', '--json'])).toEqual({
			files: ['a.stl', 'b.ply'],
			units: 'mm',
			json: true,
		});
		expect(readArguments(['--units=in', '--svg=out', 'a.obj'])).toEqual({
			files: ['a.obj'],
			units: 'in',
			svg: 'out',
			json: false,
		});
		expect(readArguments(['--', '--odd.stl'])).toEqual({ files: ['--odd.stl'], json: false });
	});

	it.each([
		[[], 'Name at least one file.'],
		[['--json'], 'Name at least one file.'],
		[['a.stl', '--units'], '--units needs a value after it.'],
		[['a.stl', '--units', '--json'], '--units needs a value after it.'],
		[['a.stl', '--units', 'feet'], '"feet" is not one of um, mm, cm, m, in.'],
		[['a.stl', '--unit', 'mm'], '"--unit" is not known.'],
		[['a.stl', '--json=yes'], '"--json=yes" is not known.'],
		[['a.stl', '-v'], '"-v" is not known.'],
	])('%j: %s', (args, words) => expect(readArguments(args)).toBe(words));
});

describe('drawingNames', () => {
	it('keeps files of one name apart', () => {
		expect(drawingNames(['x/a.stl', 'y/a.ply', 'b.obj'])).toEqual(['a.svg', 'a-2.svg', 'b.svg']);
	});
});

describe('npm run measure', () => {
	it('prints one entry per file in the order given, the same cone from every format, and ends with 0', async () => {
		const { status, stdout } = await run(
			'tooth.ply',
			'tooth.stl',
			'tooth.glb',
			'tooth.obj',
			'--units',
			'mm',
			'--json',
		);
		expect(status).toBe(0);
		const found = entries(stdout);
		expect(found.map(({ file, format, units }) => [file, format, units])).toEqual([
			['tooth.ply', 'ply', 'mm'],
			['tooth.stl', 'stl', 'mm'],
			['tooth.glb', 'glb', 'm'],
			['tooth.obj', 'obj', 'mm'],
		]);
		for (const entry of found) {
			expect(Object.keys(entry).slice(0, 7)).toEqual([
				'file',
				'format',
				'units',
				'triangles',
				'vertices',
				'components',
				'watertight',
			]);
			expect(entry).toMatchObject({ watertight: true, components: 1, triangles: cone.indices.length / 3 });
			// a cone's volume is base * height / 3; tips and angles in closed form stand in the tests of measureCrown
			expect((entry.volume_mm3 as number) / ((Math.PI * 5 * 4 * 24) / 3)).toBeCloseTo(1, 2);
			expect(entry.axialHeight_mm).toBeCloseTo(24, 1);
			expect(entry.crownBaseLength_mm).toBeCloseTo(10, 1);
			expect(entry.crownBaseWidth_mm).toBeCloseTo(8, 1);
			expect((entry.sections as unknown[]).length).toBe(9);
		}
		expect(found.map(({ warnings }) => warnings!.some(({ code }) => code === 'unit-by-standard'))).toEqual([
			false,
			false,
			true,
			false,
		]);
	});

	it('measures the others and ends with 1 when a file cannot be read', async () => {
		const { status, stdout } = await run(
			'broken.stl',
			'tooth.stl',
			'gone.stl',
			'notes.txt',
			'specimen',
			'--units',
			'mm',
			'--json',
		);
		expect(status).toBe(1);
		const found = entries(stdout);
		expect(found.map(({ error }) => error?.code)).toEqual([
			'truncated',
			undefined,
			'no-such-file',
			'unknown-format',
			'not-a-file',
		]);
		for (const { error } of found) {
			if (error) expect(Object.keys(error)).toEqual(['code', 'message', 'remedy']);
		}
		expect(found[1].triangles).toBe(cone.indices.length / 3);
	});

	it('never guesses a unit', async () => {
		const { status, stdout } = await run('tooth.stl', 'tooth.glb', '--json');
		expect(status).toBe(1);
		const [stl, glbEntry] = entries(stdout);
		expect(stl).toMatchObject({
			file: 'tooth.stl',
			format: 'stl',
			units: null,
			error: { code: 'unit-missing' },
		});
		expect(stl.error!.message + stl.error!.remedy).toMatch(/--units mm/);
		expect(glbEntry).toMatchObject({ units: 'm' });
	});

	it('ends with 2 and prints no result when it is called wrongly', async () => {
		const { status, stdout, stderr } = await run('tooth.stl', '--json', '--wide');
		expect([status, stdout]).toEqual([2, '']);
		expect(stderr).toMatch(/^Usage: npm run measure -- FILE\.\.\. /m);
	});

	it('is run by the script with nothing but JSON on standard output, from where it was typed', () => {
		const mixed = runScript('tooth.stl', 'broken.stl', '--units', 'mm', '--json');
		expect(mixed.status).toBe(1);
		expect(entries(mixed.stdout).map(({ file, error }) => [file, error?.code])).toEqual([
			['tooth.stl', undefined],
			['broken.stl', 'truncated'],
		]);
		expect(runScript('--json')).toMatchObject({ status: 2, stdout: '' });
	});

	it('says what is hardly one tooth', async () => {
		const { stdout } = await run('rings.stl', '--units', 'mm', '--json');
		expect(entries(stdout)[0].warnings![0].code).toBe('not-one-tooth');
	});

	it('measures the crown that specimen.yaml marks', async () => {
		const [entry] = entries((await run('specimen/scan.stl', '--units', 'mm', '--json')).stdout);
		expect(entry).toMatchObject({ apex: [1, 24, 0], baseMesial: [-4.5, 12, 0], baseDistal: [3, 12, 0] });
		expect(entry.crownBaseLength_mm).toBeCloseTo(7.5, 6);
	});

	it('writes for reading, and draws', async () => {
		const { status, stdout } = await run('tooth.stl', 'broken.stl', '--units', 'mm', '--svg', 'drawings');
		expect(status).toBe(1);
		expect(stdout).toMatch(/^tooth\.stl {2}STL {2}read in mm$/m);
		expect(stdout).toMatch(/^ {2}Axial height +24\.00 mm$/m);
		expect(stdout).toMatch(/^ {2}Not measured: It announces \d+ triangles and ends after 98\.$/m);
		expect(stdout).not.toMatch(/undefined|null|NaN|\[object/);
		const svg = await readFile(path.join(folder, 'drawings/tooth.svg'), 'utf8');
		expect(svg).toMatch(/^<svg [\s\S]*<path [\s\S]*<\/svg>\s*$/);
	});
});

describe('measureReport', () => {
	it('aligns numbers and keeps a value that is missing visible', () => {
		const report = measureReport([
			{
				file: 'a.stl',
				format: 'stl',
				units: null,
				error: { code: 'empty', message: 'It is empty.', remedy: 'Copy it.' },
			},
		]);
		expect(report).toBe('a.stl  STL\n  Not measured: It is empty.\n  Copy it.');
	});
});
