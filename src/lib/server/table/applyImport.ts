import type { FileEdit } from '../../content/tableImport';
import { fail, ok, type Result } from '../../domain/result';
import type { DeskFiles } from '../desk/deskFiles';
import { sha256 } from '../shapeHash';

/**
 * Writes what was planned, all of it or nothing, as one version. Nothing is written where any of the files no longer holds
 * the text that the plan was made from.
 */
export async function applyImport(
	desk: Pick<DeskFiles, 'save'>,
	edits: readonly FileEdit[],
): Promise<Result<{ written: number }, { code: 'changed-meanwhile' | 'not-written'; written: number }>> {
	if (edits.length === 0) return ok({ written: 0 });
	const saved = await desk.save({
		changes: edits.map(({ path, before, after }) => ({
			path,
			text: after,
			base: before === null ? null : sha256(before),
		})),
		by: 'spreadsheet',
		what: { code: 'imported', data: { files: edits.length } },
		// the plan has been put to the check, and forgives a scan that is still to come
		evenIfBroken: true,
	});
	if (saved.ok) return ok({ written: edits.length });
	const code = saved.problem.code === 'changed-underneath' ? 'changed-meanwhile' : 'not-written';
	return fail({ code, written: 0 });
}
