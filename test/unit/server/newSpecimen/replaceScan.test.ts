import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { replaceScan } from '../../../../src/lib/server/newSpecimen/replaceScan';
import { lookAtScan } from '../../../../src/lib/server/uploads/lookAtScan';
import { scanUploads } from '../../../../src/lib/server/uploads/scanUploads';
import { asPolygons, fanned, obj, polygonCone, stlBinary, text } from '../../scan/writers';
import { deskFolder } from '../desk/deskFolder';
import { label } from '../contentFolder';
import { put } from '../samples';

const CONE = fanned(polygonCone(8, 30));
const OLD = stlBinary(CONE);
const FACTS = `accession: SKM 9   # on the box
group: mosasaurus
part: crown
preservation: tan
bed: marl
identified: { by: Skerrow Museum, certainty: sure }
shape:
  scan:
    file: scan.stl   # from the workshop
    units: in
    crown:
      apex_mm: [0, 30, 0]
      base_mesial_mm: [-8, 0, 0]
      base_distal_mm: [8, 0, 0]
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [book]
`;

async function place() {
	const folder = await deskFolder();
	await put(folder.contentDir, 'specimens/c/specimen.yaml', FACTS);
	await put(folder.contentDir, 'specimens/c/label.en.md', label('A scan'));
	await put(folder.contentDir, 'specimens/c/scan.stl', OLD);
	const uploads = scanUploads({
		dataDir: folder.dataDir,
		now: Date.now,
		look: async (path, name) => lookAtScan(await readFile(path), name),
		mostBytes: 1e7,
	});
	const send = async (bytes: Uint8Array): Promise<string> => {
		const got = await uploads.receive(new Blob([new Uint8Array(bytes)]).stream(), bytes.length, 'x');
		if (!got.ok) throw new Error(JSON.stringify(got.problem));
		return got.value.upload;
	};
	const replace = (upload: string, id = 'c') =>
		replaceScan(folder.desk, uploads, folder.contentDir, id, { upload, units: 'mm' });
	const names = async () => (await readdir(join(folder.contentDir, 'specimens/c'))).sort();
	return { ...folder, send, replace, names };
}

describe('replaceScan', () => {
	it('takes the old scan and its marks away, keeps notes, and can be undone', async () => {
		const { desk, send, replace, names, read, contentDir } = await place();
		const bytes = text(obj(asPolygons(CONE)));
		const done = await replace(await send(bytes));
		if (!done.ok) throw new Error(JSON.stringify(done.problem));
		expect(await names()).toEqual(['label.en.md', 'scan.obj', 'specimen.yaml']);
		expect(new Uint8Array(await readFile(join(contentDir, 'specimens/c/scan.obj')))).toEqual(bytes);
		const facts = await read('specimens/c/specimen.yaml');
		expect(facts).toContain('accession: SKM 9   # on the box');
		expect((parse(facts) as { shape: unknown }).shape).toEqual({ scan: { file: 'scan.obj', units: 'mm' } });
		const [version] = await desk.versions();
		expect(version.what.code).toBe('new-scan');
		const undone = await desk.restore({
			versionId: version.id,
			side: 'before',
			scope: 'version',
			what: { code: 'undone' },
		});
		expect(undone.ok).toBe(true);
		expect(await names()).toEqual(['label.en.md', 'scan.stl', 'specimen.yaml']);
		expect(await read('specimens/c/specimen.yaml')).toBe(FACTS);
		expect(new Uint8Array(await readFile(join(contentDir, 'specimens/c/scan.stl')))).toEqual(OLD);
	});

	it('writes over a scan of the same kind', async () => {
		const { send, replace, names, contentDir } = await place();
		const bytes = stlBinary(fanned(polygonCone(6, 25)));
		expect((await replace(await send(bytes))).ok).toBe(true);
		expect(await names()).toEqual(['label.en.md', 'scan.stl', 'specimen.yaml']);
		expect(new Uint8Array(await readFile(join(contentDir, 'specimens/c/scan.stl')))).toEqual(bytes);
	});

	it('has nothing to replace in a model, or without a scan sent in', async () => {
		const { send, replace, names } = await place();
		expect(await replace('0'.repeat(32))).toEqual({ ok: false, problem: { code: 'upload-gone' } });
		const upload = await send(OLD);
		expect(await replace(upload, 'a')).toEqual({ ok: false, problem: { code: 'no-scan' } });
		expect(await replace(upload, 'nobody')).toEqual({ ok: false, problem: { code: 'no-scan' } });
		expect(await names()).toEqual(['label.en.md', 'scan.stl', 'specimen.yaml']);
	});
});
