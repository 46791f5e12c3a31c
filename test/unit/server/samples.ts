import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { CrownMeasures } from '../../../src/lib/domain/measure/crownMeasures';
import type { Exhibit, PreparedShape, Specimen } from '../../../src/lib/content/exhibit';
import { exhibitHash } from '../../../src/lib/server/composeExhibit';
import type { ShapeLevel } from '../../../src/lib/server/prepare/shapeLevel';

/** A folder of this test's own, removed when it ends. */
export async function scratchFolder(): Promise<string> {
	const folder = await mkdtemp(join(tmpdir(), 'tooth-table-'));
	onTestFinished(() => rm(folder, { recursive: true, force: true }));
	return folder;
}

export async function put(folder: string, path: string, data: string | Uint8Array): Promise<void> {
	const target = join(folder, path);
	await mkdir(dirname(target), { recursive: true });
	await writeFile(target, data);
}

/** A hash as real ones look, by any name. */
export const hashOf = (name: string): string => createHash('sha256').update(name).digest('hex');

/** Measures of a cone 20 mm high on a base of 10 x 8 mm, as far as a test needs them. */
export const measures: CrownMeasures = {
	triangles: 100,
	vertices: 52,
	components: 1,
	watertight: true,
	surfaceArea_mm2: 400,
	volume_mm3: 420,
	apex: [0, 20, 0],
	baseMesial: [-5, 0, 0],
	baseDistal: [5, 0, 0],
	axialHeight_mm: 20,
	crownHeight_mm: 20.6,
	apicalLength_mm: 20.6,
	crownBaseLength_mm: 10,
	crownBaseWidth_mm: 8,
	crownBaseRatio: 0.8,
	crownHeightRatio: 2.06,
	midCrownLength_mm: 5,
	midCrownWidth_mm: 4,
	crownAngle_deg: 76,
	apexAngle_deg: 28,
	tipRadius_mm: 0.5,
	curvature_deg: 0,
	ridgeCount: 0,
	ridges: [],
	carinaCount: 0,
	carinae: [],
	facets: [],
	sections: [],
	warnings: [],
};

export const prepared = (hash: string): PreparedShape => ({
	hash,
	triangles: 100,
	measures,
	bounds: { min: [-5, 0, -4], max: [5, 20, 4] },
	picture: { side_mm: 22.7, toothWidth_mm: 10, toothHeight_mm: 20 },
});

export function specimen(id: string, changes: Partial<Specimen> = {}): Specimen {
	return {
		id,
		accession: `SKM ${id}`,
		group: 'mosasaurus',
		part: 'crown',
		preservation: 'honey',
		shape: {
			kind: 'model',
			form: {
				crownHeight_mm: 20,
				baseLength_mm: 10,
				baseWidth_mm: 8,
				sections: [{ at: 0, shape: 'round' }],
				taper: 'cone',
				curve: { distal_deg: 0, lingual_deg: 0, startsAt: 0 },
				tipRadius_mm: 0.5,
				carinae: [],
				root: { state: 'none' },
			},
			basedOn: ['book'],
		},
		prepared: prepared(hashOf('cone')),
		identified: { by: 'Skerrow Museum', certainty: 'likely' },
		bed: 'marl',
		features: [{ id: 'edge', kind: 'carina', at: 0.5, where_deg: 0 }],
		licence: 'http://creativecommons.org/licenses/by/4.0/',
		rightsHolder: 'Skerrow Museum',
		sources: ['book'],
		text: {
			en: {
				title: `Tooth ${id}`,
				short: 'A crown',
				alt: 'A cone',
				features: { edge: 'Edge' },
				html: '<p>Words</p>',
				plain: 'Words',
			},
		},
		...changes,
	};
}

export function exhibit(changes: Partial<Exhibit> = {}): Exhibit {
	const whole: Exhibit = {
		hash: '',
		museum: 'Skerrow Museum',
		languages: [
			{ code: 'en', name: 'English' },
			{ code: 'fr', name: 'Français' },
		],
		rooms: ['compare'],
		screen: { diagonal_in: 32, width_px: 1920, height_px: 1080 },
		idle: { warnAfter_s: 100, resetAfterWarning_s: 25 },
		specimens: [specimen('a'), specimen('b')],
		groups: [
			{
				id: 'mosasaurus',
				latin: 'Mosasaurus',
				living: false,
				habitat: 'sea',
				sources: ['book'],
				text: { en: { name: 'Mosasaurus', short: 'Sea lizard', html: '', plain: '' } },
			},
		],
		beds: [{ id: 'marl', oldest_Ma: 70, youngest_Ma: 67, text: { en: { name: 'Marl', short: 'Mud' } } }],
		sources: [{ id: 'book', citation: 'A book, 1865.', tag: 'seen' }],
		glossary: [{ id: 'carina', text: { en: { term: 'Carina', meaning: 'An edge.' } } }],
		ui: { en: { start: 'Start', back: 'Back' }, fr: { start: 'Commencer' } },
		...changes,
	};
	return { ...whole, hash: exhibitHash(whole) };
}

/**
 * A ball of radius 10 mm, its lower half region 5 (root), the rest 0 (enamel); 2 * rings * (rings - 1) * 2
 * triangles. Vertices on the equator stand there once for each region.
 */
export function ball(rings: number): ShapeLevel {
	const around = rings * 2;
	const half = rings / 2;
	const positions: number[] = [];
	const regions: number[] = [];
	const rows: number[] = [];
	const row = (ring: number, region: number): void => {
		rows.push(positions.length / 3);
		for (let i = 0; i < around; i++) {
			const polar = (Math.PI * ring) / rings;
			const turn = (2 * Math.PI * i) / around;
			const across = ring === 0 || ring === rings ? 0 : 10 * Math.sin(polar);
			positions.push(across * Math.cos(turn), 10 * Math.cos(polar), across * Math.sin(turn));
			regions.push(region);
		}
	};
	for (let ring = 0; ring <= half; ring++) row(ring, 0);
	for (let ring = half; ring <= rings; ring++) row(ring, 5);
	const indices: number[] = [];
	for (let r = 0; r + 1 < rows.length; r++) {
		if (r === half) continue; // the two copies of the equator
		for (let i = 0; i < around; i++) {
			const next = (i + 1) % around;
			// a pole is one vertex, the first of its row
			const [a, b] = [rows[r] + (r === 0 ? 0 : i), rows[r] + next];
			const last = r + 2 === rows.length;
			const [c, d] = [rows[r + 1] + i, rows[r + 1] + (last ? 0 : next)];
			if (r !== 0) indices.push(a, b, d);
			if (!last) indices.push(a, d, c);
		}
	}
	return {
		positions: Float32Array.from(positions),
		normals: Float32Array.from(positions, (value) => value / 10),
		openness: new Uint8Array(positions.length / 3).fill(255),
		regions: Uint8Array.from(regions),
		indices: Uint32Array.from(indices),
	};
}
