import { readFile } from 'node:fs/promises';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runShapeJob } from '../../../../src/lib/server/prepare/runShapeJob';
import { shapeFiles } from '../../../../src/lib/server/shapeFiles';
import { fanned, polygonCone } from '../../scan/writers';
import { glb, gltfDocument } from '../../scan/gltfWriters';
import { hashOf, put, scratchFolder } from '../samples';

it('serves nothing of a scan but its surface: no extras, names, makers or places', async () => {
	const dataDir = await scratchFolder();
	const doc = gltfDocument([{ mesh: fanned(polygonCone(8, 30)) }]);
	const SECRET = 'Latitude 51.5 by A. Person';
	const root = doc.getRoot();
	const asset = root.getAsset();
	asset.generator = SECRET;
	asset.copyright = SECRET;
	root.setExtras({ note: SECRET });
	for (const part of [...root.listMeshes(), ...root.listNodes(), ...root.listScenes()])
		part.setName(SECRET).setExtras({ note: SECRET });
	const bytes = await glb(doc);
	expect(Buffer.from(bytes).includes(SECRET)).toBe(true);
	await put(dataDir, 'scan.glb', bytes);
	const hash = hashOf('a scan with extras');
	const outcome = await runShapeJob({
		hash,
		dataDir,
		source: {
			kind: 'scan',
			path: join(dataDir, 'scan.glb'),
			bytesHash: createHash('sha256').update(bytes).digest('hex'),
			bytes: bytes.length,
			units: 'mm',
		},
		preservations: ['tan'],
	});
	expect(outcome.ok).toBe(true);
	const files = shapeFiles(dataDir, hash);
	for (const path of [files.glb, files.facts, files.drawing, files.picture('tan')])
		expect((await readFile(path)).includes('A. Person'), path).toBe(false);
});
