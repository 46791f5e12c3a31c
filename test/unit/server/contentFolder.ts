import { put } from './samples';
import type { ReportStage, ShapeJob, ShapeOutcome } from '../../../src/lib/server/prepare/shapeJob';
import { shapeFiles } from '../../../src/lib/server/shapeFiles';
import { prepared } from './samples';

export const quiet = { info: () => undefined, warn: () => undefined };

/** Files of one specimen; its shape is a plain cone of the height given. */
export async function putSpecimen(folder: string, id: string, title: string, height_mm = 20): Promise<void> {
	await put(
		folder,
		`specimens/${id}/specimen.yaml`,
		`accession: SKM ${id}
group: mosasaurus
part: crown
preservation: honey
bed: marl
identified: { by: Skerrow Museum, certainty: likely }
shape:
  model:
    based_on: [book]
    crown_height_mm: ${height_mm}
    base_length_mm: 10
    base_width_mm: 8
    sections: [{ at: 0, shape: oval }]
    taper: cone
    curve: { distal_deg: 10, lingual_deg: 0, starts_at: 0.3 }
    tip_radius_mm: 0.5
    carinae: []
    root: { state: none }
licence: http://creativecommons.org/licenses/by/4.0/
rights_holder: Skerrow Museum
sources: [book]
`,
	);
	await put(folder, `specimens/${id}/label.en.md`, label(title));
}

export const label = (title: string): string =>
	`---\ntitle: ${title}\nshort: A crown\nalt: A smooth brown cone\n---\nIt was found on the shore.\n`;

/** A small exhibit with specimens a and b. */
export async function putContent(folder: string): Promise<void> {
	await put(
		folder,
		'exhibit.yaml',
		`museum: Skerrow Museum
languages: [{ code: en, name: English }]
rooms: [compare]
screen: { diagonal_in: 32, width_px: 1920, height_px: 1080 }
idle: { warn_after_s: 100, reset_after_warning_s: 25 }
`,
	);
	await put(folder, 'sources.yaml', 'book: { citation: "A book, 1865.", tag: seen }\n');
	await put(folder, 'groups/mosasaurus.yaml', 'living: false\nhabitat: sea\nsources: [book]\n');
	await put(folder, 'groups/mosasaurus.en.md', '---\nname: Mosasaurus\nshort: A sea lizard\n---\n');
	await put(folder, 'beds/marl.yaml', 'oldest_ma: 70\nyoungest_ma: 67\n');
	await put(folder, 'beds/marl.en.md', '---\nname: Marl\nshort: Soft mud\n---\n');
	await put(folder, 'glossary/en.yaml', 'carina: { term: Carina, meaning: A sharp edge. }\n');
	await put(folder, 'ui/en.yaml', 'start_title: What can a tooth tell?\n');
	await putSpecimen(folder, 'a', 'First tooth');
	await putSpecimen(folder, 'b', 'Second tooth');
}

/** Stands for the real preparer where a test is not about shapes: counts its jobs and leaves small files. */
export function countingPreparer(): {
	jobs: ShapeJob[];
	prepare: (job: ShapeJob, report?: ReportStage) => Promise<ShapeOutcome>;
} {
	const jobs: ShapeJob[] = [];
	return {
		jobs,
		async prepare(job) {
			jobs.push(job);
			const files = shapeFiles('', job.hash);
			await put(job.dataDir, files.glb, 'glTF');
			for (const preservation of job.preservations)
				await put(job.dataDir, files.picture(preservation), 'RIFF');
			const shape = prepared(job.hash);
			await put(job.dataDir, files.facts, JSON.stringify(shape));
			return { ok: true, prepared: shape };
		},
	};
}
