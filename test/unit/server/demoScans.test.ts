import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import { measureFindings } from '../../../src/lib/content/measureFindings';
import { DEMO_SCANS, demoScan, type DemoScan } from '../../../src/lib/server/demoScans';
import { fsReader } from '../../../src/lib/server/fsReader';
import { measureScan } from '../../../src/lib/server/prepare/measureScan';
import { readScan } from '../../../src/lib/server/scan/readScan';

/** The file that comes with the project, measured as the exhibit does. */
async function committed({ specimen, file }: DemoScan) {
	const { draft } = await loadContent(fsReader('content'));
	const found = draft!.specimens.find(({ id }) => id === specimen);
	if (found?.shape.kind !== 'scan') throw new Error(`${specimen} is not a scan`);
	const bytes = await readFile(`content/specimens/${specimen}/${file}`);
	const scan = await readScan(bytes, file, found.shape.units, { recentre: true });
	if (!scan.ok) throw new Error(scan.problem.message);
	const measured = measureScan(scan.value, found.shape.crown);
	if (!measured.ok) throw new Error(measured.problem.message);
	return { found, bytes, ...measured.value };
}

describe('demoScans', () => {
	it.each(DEMO_SCANS)(
		'$specimen measures as it was made, through noise, holes and a frame of its own',
		async (scan) => {
			const { found, bytes, mesh, measures } = await committed(scan);
			const { form } = scan;
			expect(bytes.length).toBeLessThan(600_000);
			expect(mesh.indices.length / 3).toBeGreaterThan(10_000);
			// lengths within 1 % with 0.02 mm noise
			const height = form.wear?.tipWornTo_mm ?? form.crownHeight_mm;
			expect(Math.abs(measures.axialHeight_mm / height - 1)).toBeLessThan(0.01);
			expect(Math.abs(measures.crownBaseLength_mm / form.baseLength_mm - 1)).toBeLessThan(0.01);
			expect(Math.abs(measures.crownBaseWidth_mm / form.baseWidth_mm - 1)).toBeLessThan(0.01);
			expect(measures.carinaCount).toBe(form.carinae.length);
			expect(measures.ridgeCount).toBe(form.ridges?.count ?? 0);
			// torn, so no volume is told
			expect(measures.volume_mm3).toBeNull();
			expect(measures.components).toBe(1);
			expect(measureFindings(found, measures, () => ({ line: 1, column: 1 }))).toEqual([]);
		},
	);

	it('makes the same file from the same numbers, and another from another seed', async () => {
		const [scan] = DEMO_SCANS;
		const [one, two, other] = await Promise.all([scan, scan, { ...scan, seed: 7 }].map(demoScan));
		expect(one.bytes).toEqual(two.bytes);
		expect(other.bytes).not.toEqual(one.bytes);
	});

	it('says on every label that this is no real object', async () => {
		const { draft } = await loadContent(fsReader('content'));
		const plain = { en: 'Not a real object', fr: 'pas un objet réel', es: 'No es un objeto real' };
		for (const { specimen } of DEMO_SCANS) {
			const { text, sources } = draft!.specimens.find(({ id }) => id === specimen)!;
			for (const [lang, words] of Object.entries(plain)) expect(text[lang].plain).toContain(words);
			expect(sources).toContain('skerrow-trial-scan');
		}
	});
});
