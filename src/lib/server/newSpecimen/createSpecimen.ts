import type { FileChange, Saved, SaveFailure } from '../../content/deskFiles';
import { scanName, type NewSpecimen } from '../../content/newSpecimen';
import { readYaml } from '../../content/readYaml';
import { fail, ok, type Result } from '../../domain/result';
import type { DeskFiles } from '../desk/deskFiles';
import type { ScanUploads } from '../uploads/scanUploads';
import { newSpecimenFiles, type ModelLines, type NewShapeFrom } from './newSpecimenFiles';

export type CreateFailure = SaveFailure | { code: 'taken' | 'upload-gone' | 'no-form' };

/**
 * Makes a specimen, as a draft: its facts, its words in the first language and its scan in one save, all or none, which
 * can be undone like any other.
 */
export async function createSpecimen(
	desk: Pick<DeskFiles, 'list' | 'open' | 'save'>,
	uploads: Pick<ScanUploads, 'find' | 'discard'>,
	asked: NewSpecimen,
	firstLanguage: string,
): Promise<Result<{ saved: Saved; needsMarks: boolean }, CreateFailure>> {
	const folder = `specimens/${asked.id}/`;
	if ((await desk.list()).some(({ path }) => path.toLowerCase().startsWith(folder)))
		return fail({ code: 'taken' });
	const { shape } = asked;
	const scan = shape.kind === 'scan' ? await uploads.find(shape.upload) : null;
	let from: NewShapeFrom;
	if (shape.kind === 'scan') {
		if (!scan) return fail({ code: 'upload-gone' });
		from = { kind: 'scan', format: scan.look.format };
	} else {
		const model = await modelOf(desk, shape.like);
		if (!model) return fail({ code: 'no-form' });
		from = { kind: 'model', model };
	}
	const template = await desk.open(`templates/specimens/new-${shape.kind}/specimen.yaml`);
	const made = newSpecimenFiles(asked, template.ok ? template.value.exact : null, from);
	if (!made.ok) throw new Error('createSpecimen: the bare file cannot be filled in');
	const changes: FileChange[] = [
		{ path: `${folder}specimen.yaml`, base: null, text: made.value.facts },
		{ path: `${folder}label.${firstLanguage}.md`, base: null, text: made.value.label },
		...(scan ? [{ path: `${folder}${scanName(scan.look.format)}`, base: null, from: scan.path }] : []),
	];
	const saved = await desk.save({
		changes,
		by: 'desk',
		what: { code: 'new-specimen', data: { id: asked.id, accession: asked.accession.trim() } },
	});
	if (!saved.ok) return saved.problem.code === 'changed-underneath' ? fail({ code: 'taken' }) : saved;
	if (shape.kind === 'scan') await uploads.discard(shape.upload).catch(() => undefined);
	return ok({ saved: saved.value, needsMarks: scan !== null && scan.look.crown === null });
}

/** The model's lines of a specimen's file; null where it has none. */
async function modelOf(desk: Pick<DeskFiles, 'open'>, id: string): Promise<ModelLines | null> {
	const opened = await desk.open(`specimens/${id}/specimen.yaml`);
	if (!opened.ok) return null;
	const value = readYaml(opened.value.text).value as { shape?: { model?: ModelLines } | null } | null;
	const model = value?.shape?.model;
	return model && typeof model === 'object' && typeof model.crown_height_mm === 'number' ? model : null;
}
