import type { FieldValue, FileChange } from '../../content/deskFiles';
import type { DeskFile, FactFields, LabelFields, SpecimenEdits } from '../../content/specimenDesk';
import { fail, ok, type Result } from '../../domain/result';
import { editContent, type ContentEdits } from '../desk/editContent';
import { newLabel } from '../table/labelFile';
import { FIELD_PATHS } from './fieldPaths';

/** Puts what was typed in fields into the texts of a specimen's files; all that was not typed stays byte for byte. */
export function applyEdits(
	files: readonly DeskFile[],
	{ facts = {}, labels = {} }: SpecimenEdits,
): Result<FileChange[], { path: string }> {
	const changes: FileChange[] = [];
	for (const { path, base, exact } of files) {
		const language = /\/label\.([^./]+)\.md$/.exec(path)?.[1];
		const edits = language === undefined ? factEdits(facts) : labelEdits(labels[language] ?? {});
		if (Object.keys(edits.fields).length === 0 && edits.body === undefined) continue;
		// a label that is not there yet is begun with its title
		const begun = exact ?? newLabel({ title: String(edits.fields.title ?? '') });
		const edited = editContent(path, begun, edits);
		if (!edited.ok) return fail({ path });
		if (edited.value !== exact) changes.push({ path, base, text: edited.value });
	}
	return ok(changes);
}

type Edits = Required<Pick<ContentEdits, 'fields'>> & Pick<ContentEdits, 'body'>;

const factEdits = (facts: Partial<FactFields>): Edits => ({
	fields: Object.fromEntries(
		Object.entries(facts).map(([name, value]) => [FIELD_PATHS[name as keyof FactFields], written(value)]),
	),
});

function labelEdits({ features = {}, text, ...words }: Partial<LabelFields>): Edits {
	const fields = {
		...Object.fromEntries(Object.entries(words).map(([name, value]) => [name, written(value)])),
		...Object.fromEntries(Object.entries(features).map(([id, name]) => [`features.${id}`, written(name)])),
	};
	return { fields, ...(text !== undefined && { body: text }) };
}

/** An empty field takes its line away. */
const written = (value: string | string[]): FieldValue =>
	Array.isArray(value) ? value : value.trim() === '' ? null : value.trim();
