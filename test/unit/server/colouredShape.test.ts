import { validateBytes } from 'gltf-validator';
import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { readGlb } from '../../../src/lib/server/prepare/readGlb';
import { runShapeJob } from '../../../src/lib/server/prepare/runShapeJob';
import type { ShapeLevel } from '../../../src/lib/server/prepare/shapeLevel';
import { shapeFiles } from '../../../src/lib/server/shapeFiles';
import { gltfDocument, gltfIo } from '../scan/gltfWriters';
import { scratchFolder } from './samples';

const form: ToothForm = {
	crownHeight_mm: 30,
	baseLength_mm: 16,
	baseWidth_mm: 10,
	sections: [{ at: 0, shape: 'oval' }],
	taper: 'bullet',
	curve: { distal_deg: 18, lingual_deg: 0, startsAt: 0.3 },
	tipRadius_mm: 0.8,
	carinae: [],
	root: { state: 'none' },
};

/** Bands from the base up, a quarter of the crown's height each. */
const BANDS = [
	[150, 120, 80],
	[60, 50, 45],
	[20, 18, 17],
	[210, 190, 160],
];

/** A crown as a program for photographs leaves it: GLB in metres, few triangles, its bands in a picture of 4096 px. */
async function banded(): Promise<Uint8Array> {
	const sculpted = sculpt(form, { detail: 'draft' });
	if (!sculpted.ok) throw new Error(JSON.stringify(sculpted.problem));
	const { positions, indices } = sculpted.value.mesh;
	const doc = gltfDocument([{ mesh: { positions: positions.map((value) => value / 1000), indices } }]);
	const uv = new Float32Array((positions.length / 3) * 2);
	for (let i = 0; i < uv.length / 2; i++)
		uv.set([0.5 + positions[i * 3] / 100, 1 - positions[i * 3 + 1] / 30], i * 2);
	const pixels = new Uint8Array(64 * 4096 * 3);
	for (let y = 0; y < 4096; y++)
		for (let x = 0; x < 64; x++) pixels.set(BANDS[3 - Math.floor(y / 1024)], (y * 64 + x) * 3);
	const picture = await sharp(pixels, { raw: { width: 64, height: 4096, channels: 3 } })
		.png()
		.toBuffer();
	const texture = doc.createTexture().setImage(new Uint8Array(picture)).setMimeType('image/png');
	const buffer = doc.getRoot().listBuffers()[0];
	doc
		.getRoot()
		.listMeshes()[0]
		.listPrimitives()[0]
		.setAttribute('TEXCOORD_0', doc.createAccessor().setType('VEC2').setArray(uv).setBuffer(buffer))
		.setMaterial(doc.createMaterial().setBaseColorTexture(texture));
	return (await gltfIo()).writeBinary(doc);
}

async function prepared(plain: boolean): Promise<{ glb: Uint8Array; picture: Buffer; levels: ShapeLevel[] }> {
	const data = await scratchFolder();
	const bytes = await banded();
	const path = join(data, 'scan.glb');
	await writeFile(path, bytes);
	const bytesHash = createHash('sha256').update(bytes).digest('hex');
	const outcome = await runShapeJob({
		hash: bytesHash,
		dataDir: data,
		source: { kind: 'scan', path, bytesHash, bytes: bytes.length, units: 'm', ...(plain ? { plain } : {}) },
		preservations: ['honey'],
	});
	if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
	const files = shapeFiles(data, bytesHash);
	const glb = await readFile(files.glb);
	const picture = await sharp(files.picture('honey')).flatten({ background: '#fff' }).raw().toBuffer();
	return { glb, picture, levels: [await readGlb(glb, 0), await readGlb(glb, 1)] };
}

describe('the colour of a scan on its way to the screen', () => {
	it('stands at the right places of both levels, in a valid file', { timeout: 60_000 }, async () => {
		const { glb, levels, picture } = await prepared(false);
		const { issues } = await validateBytes(glb);
		expect(issues.numErrors).toBe(0);
		const [full, light] = levels;
		expect(full.indices.length / 3).toBeLessThanOrEqual(60_000);
		for (const [{ positions, colours }, border_mm] of [
			[full, 0.4],
			[light, 0.6],
		] as const) {
			const seen = new Set<number>();
			for (let i = 0; i < positions.length / 3; i++) {
				const height = (positions[i * 3 + 1] / 30) * 4;
				const nearBorder = Math.abs(height - Math.round(height)) * 7.5 < border_mm;
				const band = Math.min(3, Math.max(0, Math.floor(height)));
				if (nearBorder) continue;
				seen.add(band);
				for (let k = 0; k < 3; k++)
					expect(Math.abs(colours![i * 3 + k] - BANDS[band][k])).toBeLessThanOrEqual(3);
			}
			expect([...seen].sort()).toEqual([0, 1, 2, 3]);
		}
		// the file's triangles were too few for its picture
		expect(full.indices.length / 3).toBeGreaterThan(3_000);
		// the tray picture shows the dark band far darker than in the colour of the preservation
		const middle = (pixels: Buffer): number => pixels[(190 * 480 + 240) * 3 + 1];
		expect(middle(picture)).toBeLessThan(middle((await prepared(true)).picture) - 40);
	});

	it('is left out where the curator wants it so', { timeout: 60_000 }, async () => {
		const { levels } = await prepared(true);
		for (const { colours } of levels) expect(colours).toBeUndefined();
	});
});
