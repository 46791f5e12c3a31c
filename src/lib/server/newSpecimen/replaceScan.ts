import { join } from 'node:path';
import type { FileChange, Saved, SaveFailure } from '../../content/deskFiles';
import { scanName, type AskedUnit } from '../../content/newSpecimen';
import { readYaml } from '../../content/readYaml';
import { fail, ok, type Result } from '../../domain/result';
import type { DeskFiles } from '../desk/deskFiles';
import { realFs } from '../desk/deskFs';
import { editContent } from '../desk/editContent';
import { hashOfFile } from '../desk/writeFiles';
import type { ScanUploads } from '../uploads/scanUploads';

export type ReplaceFailure = SaveFailure | { code: 'upload-gone' | 'no-scan' | 'not-editable' };

interface ScanLines {
	file?: unknown;
	units?: unknown;
	crown?: unknown;
}

/** What a specimen's file says of its scan; null for a model, and where it cannot be read. */
export function scanLines(facts: string): ScanLines | null {
	const value = readYaml(facts.replace(/^\uFEFF/, '')).value as { shape?: { scan?: ScanLines } } | null;
	const scan = value?.shape?.scan;
	return scan && typeof scan === 'object' ? scan : null;
}

/**
 * Puts another scan in the place of a specimen's, in one save. Marks on the crown belong to the old one's frame and go with
 * it; marked places stay, for the curator to look at.
 */
export async function replaceScan(
	desk: Pick<DeskFiles, 'open' | 'save'>,
	uploads: Pick<ScanUploads, 'find' | 'discard'>,
	contentDir: string,
	id: string,
	asked: { upload: string; units: AskedUnit },
): Promise<Result<{ saved: Saved; needsMarks: boolean }, ReplaceFailure>> {
	const scan = await uploads.find(asked.upload);
	if (!scan) return fail({ code: 'upload-gone' });
	const folder = `specimens/${id}/`;
	const facts = await desk.open(`${folder}specimen.yaml`);
	const now = facts.ok ? scanLines(facts.value.exact) : null;
	if (!facts.ok || !now) return fail({ code: 'no-scan' });
	const file = scanName(scan.look.format);
	const edited = editContent(facts.value.path, facts.value.exact, {
		fields: {
			'shape.scan.file': file,
			'shape.scan.units': asked.units,
			...(now.crown !== undefined && { 'shape.scan.crown': null }),
		},
	});
	if (!edited.ok) return fail({ code: 'not-editable' });
	const hashNow = (name: string) => hashOfFile(realFs, join(contentDir, folder, name));
	const changes: FileChange[] = [
		{ path: facts.value.path, base: facts.value.base, text: edited.value },
		{ path: `${folder}${file}`, base: await hashNow(file), from: scan.path },
	];
	// one that is called otherwise would lie there unused
	if (typeof now.file === 'string' && now.file !== file && /^[^/\\]+$/.test(now.file)) {
		const base = await hashNow(now.file);
		if (base !== null) changes.push({ path: `${folder}${now.file}`, base, text: null });
	}
	const saved = await desk.save({ changes, by: 'desk', what: { code: 'new-scan', data: { id } } });
	if (!saved.ok) return saved;
	await uploads.discard(asked.upload).catch(() => undefined);
	return ok({ saved: saved.value, needsMarks: scan.look.crown === null });
}
