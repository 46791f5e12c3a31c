import type { FieldValue } from '../../content/deskFiles';
import { splitFieldPath } from '../../content/fieldPath';
import { fileKind } from '../../content/fileKind';
import { fail, ok, type Result } from '../../domain/result';
import { editFields } from '../table/editFields';
import { KEY_ORDER } from '../table/editSpecimenFiles';
import { editMarkdown } from '../table/labelFile';

export interface ContentEdits {
	/** values by field path, `identified.by` or `features[0].at`; null takes a line away */
	fields?: Readonly<Record<string, FieldValue>>;
	/** of a Markdown file: the text below its short lines */
	body?: string;
}

/** Where a new line goes: behind the one that comes before it here. */
const ORDER: Readonly<Record<string, readonly string[]>> = {
	specimen: KEY_ORDER,
	text: ['title', 'name', 'short', 'alt', 'moves', 'lives', 'eats', 'eaten_by', 'features'],
	group: ['latin', 'living', 'habitat', 'length_m', 'sources'],
	exhibit: [
		'museum',
		'languages',
		'rooms',
		'specimens_first',
		'time_zone',
		'screen',
		'idle',
		'contact',
		'public_address',
		'counts',
	],
};

/**
 * Changes values in the exact text of a content file (`OpenFile.exact`). Notes, order, line ends and every other sign stay
 * as they are; the result has been read again to prove that only what was asked for has changed.
 */
export function editContent(
	path: string,
	exact: string,
	{ fields = {}, body }: ContentEdits,
): Result<string, { code: 'not-editable' }> {
	const edits = Object.entries(fields).map(([name, value]) => ({ path: splitFieldPath(name), value }));
	const order = ORDER[fileKind(path).kind] ?? [];
	if (path.endsWith('.md')) return editMarkdown(exact, edits, body, order);
	if (body !== undefined) return fail({ code: 'not-editable' });
	return edits.length === 0 ? ok(exact) : editFields(exact, edits, order);
}
