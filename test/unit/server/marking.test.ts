import { chmod, readdir, readFile, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseSave, readForMarking, saveSpecimen } from '../../../src/lib/server/marking';
import { put, scratchFolder } from './samples';
import { deskOn } from './desk/deskFolder';

const FILE = `accession: SKM 1 # a note
group: mosasaurus
part: rooted-tooth
preservation: tan
identified: { by: Skerrow Museum, certainty: sure }
shape:
  scan: { file: scan.stl, units: in }
features:
  - { id: edge, at: 0.5, where: distal }
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [ours]
`;
const crown = { apex: [1, 2, 30], baseMesial: [-5, 0, 0], baseDistal: [5, 0, 0] } as const;

async function content(text: string = FILE): Promise<string> {
	const folder = await scratchFolder();
	await put(folder, 'specimens/skm-1/specimen.yaml', text);
	return folder;
}

const fileOf = (folder: string): Promise<string> =>
	readFile(join(folder, 'specimens/skm-1/specimen.yaml'), 'utf8');

async function hashOf(folder: string): Promise<string> {
	const state = await readForMarking(folder, 'skm-1');
	if (!state.ok) throw new Error(state.problem.message);
	return state.value.hash;
}

describe('readForMarking', () => {
	it('reads the scan, its marks and its features', async () => {
		const folder = await content();
		const state = await readForMarking(folder, 'skm-1');
		expect(state).toEqual({
			ok: true,
			value: {
				id: 'skm-1',
				hash: expect.stringMatching(/^[0-9a-f]{64}$/),
				scan: { file: 'scan.stl', units: 'in' },
				crown: null,
				features: [{ id: 'edge', kind: 'other', at: 0.5, where_deg: 0 }],
			},
		});
	});

	it('has words for a specimen that is not there, is broken, or lies outside the folder', async () => {
		const code = async (folder: string, id: string) => {
			const state = await readForMarking(folder, id);
			return state.ok ? 'ok' : state.problem.code;
		};
		const folder = await content('accession: [\n');
		expect(await code(folder, 'skm-1')).toBe('specimen-has-errors');
		for (const id of ['skm-2', '..', '../specimens/skm-1', 'SKM-1', '', 'a/b', 'skm-1\0'])
			expect(await code(folder, id), id).toBe('no-such-specimen');
		const outside = await content();
		await symlink(join(outside, 'specimens/skm-1'), join(folder, 'specimens/skm-9'));
		expect(await code(folder, 'skm-9')).toBe('no-such-specimen');
		await put(folder, 'specimens/skm-3/specimen.yaml', new Uint8Array([0xe9, 0x0a]));
		expect(await code(folder, 'skm-3')).toBe('unreadable');
	});
});

describe('saveSpecimen', () => {
	it('writes the marks, and gives the hash that the next save must name', async () => {
		const folder = await content();
		const saved = await saveSpecimen(await deskOn(folder), folder, 'skm-1', await hashOf(folder), { crown });
		expect(saved).toEqual({ ok: true, value: { hash: await hashOf(folder) } });
		expect(await fileOf(folder)).toContain('accession: SKM 1 # a note\n');
		const state = await readForMarking(folder, 'skm-1');
		expect(state.ok && state.value.crown).toEqual(crown);
		// nothing else is left in the folder
		expect(await readdir(join(folder, 'specimens/skm-1'))).toEqual(['specimen.yaml']);
	});

	it('refuses when the file has changed underneath, and leaves it alone', async () => {
		const folder = await content();
		const hash = await hashOf(folder);
		const edited = FILE.replace('SKM 1', 'SKM 2');
		await put(folder, 'specimens/skm-1/specimen.yaml', edited);
		expect(await saveSpecimen(await deskOn(folder), folder, 'skm-1', hash, { crown })).toMatchObject({
			ok: false,
			problem: { code: 'changed-meanwhile' },
		});
		expect(await fileOf(folder)).toBe(edited);
	});

	it('lets only one of two saves through that name the same text', async () => {
		const folder = await content();
		const hash = await hashOf(folder);
		const desk = await deskOn(folder);
		const saves = await Promise.all([
			saveSpecimen(desk, folder, 'skm-1', hash, { crown }),
			saveSpecimen(desk, folder, 'skm-1', hash, { features: [] }),
		]);
		// which of them is first is the disk's affair
		const [marks, features] = saves.map(({ ok }) => ok);
		expect(marks).toBe(!features);
		expect((await fileOf(folder)).includes('id: edge')).toBe(marks);
		expect(await desk.versions()).toMatchObject([
			{ by: 'marking', what: { code: 'marked', data: { id: 'skm-1' } } },
		]);
	});

	it('writes nothing where nothing changes, and says why where it cannot', async () => {
		const folder = await content();
		const hash = await hashOf(folder);
		await chmod(join(folder, 'specimens/skm-1/specimen.yaml'), 0o400);
		expect(await saveSpecimen(await deskOn(folder), folder, 'skm-1', hash, {})).toEqual({
			ok: true,
			value: { hash },
		});
		const same = { ...crown, apex: crown.baseDistal };
		expect(await saveSpecimen(await deskOn(folder), folder, 'skm-1', hash, { crown: same })).toMatchObject({
			ok: false,
			problem: { code: 'marks-not-possible' },
		});
		expect(await fileOf(folder)).toBe(FILE);
	});
});

describe('parseSave', () => {
	it('takes marks as the page sends them', () => {
		const features = [{ id: 'edge', kind: 'carina', at: 0.5, where_deg: 12 }];
		const body = { baseHash: 'x', crown: { ...crown, labial: [0, 1, 0] }, features };
		expect(parseSave(JSON.parse(JSON.stringify(body)))).toEqual(body);
		expect(parseSave({ baseHash: 'x', crown: null })).toEqual({ baseHash: 'x', crown: null });
	});

	it('takes nothing else', () => {
		const feature = { id: 'edge', kind: 'carina', at: 0.5, where_deg: 12 };
		for (const body of [
			null,
			[],
			{},
			{ crown },
			{ baseHash: 'x', crown: { ...crown, apex: [1, 2] } },
			{ baseHash: 'x', crown: { ...crown, apex: [1, 2, null] } },
			{ baseHash: 'x', crown, extra: 1 },
			{ baseHash: 'x', features: [{ ...feature, id: 'a, kind: pit }' }] },
			{ baseHash: 'x', features: [{ ...feature, kind: 'edge' }] },
			{ baseHash: 'x', features: [{ ...feature, at: 2 }] },
			{ baseHash: 'x', features: Array.from({ length: 51 }, (_, i) => ({ ...feature, id: `f${i}` })) },
		])
			expect(parseSave(body)).toBeNull();
	});
});
