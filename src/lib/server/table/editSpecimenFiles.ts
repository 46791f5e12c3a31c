import { fail, ok, type Result } from '../../domain/result';
import type { Column } from './columns';
import { editFields, type FieldEdit } from './editFields';
import { editLabel, newLabel, type LabelEdits } from './labelFile';
import type { SpecimenFiles } from './specimenCells';
import type { CellValue, FileEdit, TableProblem } from '../../content/tableImport';
import { yamlScalar } from './yamlScalar';

/** Keys of specimen.yaml in the order in which they are written. */
export const KEY_ORDER = [
	'status',
	'show',
	'accession',
	'group',
	'part',
	'preservation',
	'bed',
	'jaw_place',
	'identified',
	'shape',
	'declared',
	'locality',
	'features',
	'licence',
	'rights_holder',
	'sources',
];

/** The new texts of a specimen's files with these values, by column; of a new specimen where there are none. */
export function editSpecimenFiles(
	id: string,
	files: SpecimenFiles | undefined,
	values: ReadonlyMap<string, CellValue>,
	columns: readonly Column[],
	languages: readonly string[],
): Result<FileEdit[], TableProblem> {
	const edits: FileEdit[] = [];
	const facts: FieldEdit[] = [];
	const labels = new Map<string, LabelEdits>();
	for (const column of columns) {
		const value = values.get(column.key);
		if (value === undefined) continue;
		if (column.path) facts.push({ path: column.path, value });
		else if (column.label) {
			const { language, field } = column.label;
			labels.set(language, { ...labels.get(language), [field]: value });
		}
	}
	if (!files) {
		const given = (column: Column): boolean => values.has(column.key);
		const missing = columns.find(
			(column) =>
				column.needed &&
				!given(column) &&
				(column.path !== undefined || column.label?.language === languages[0]),
		);
		if (missing) return fail({ code: 'needs', column: missing.key });
		const path = `specimens/${id}/specimen.yaml`;
		edits.push({ path, before: null, after: newFacts(facts) });
	} else if (facts.length > 0) {
		const edited = editFields(files.facts, facts, KEY_ORDER);
		if (!edited.ok) return fail({ code: 'not-editable', found: 'specimen.yaml' });
		edits.push({ path: `specimens/${id}/specimen.yaml`, before: files.facts, after: edited.value });
	}
	for (const [language, some] of labels) {
		const path = `specimens/${id}/label.${language}.md`;
		const before = files?.labels.get(language) ?? null;
		if (before === null) {
			for (const key of ['title', 'short'] as const)
				if (typeof some[key] !== 'string') return fail({ code: 'needs', column: `${key}_${language}` });
			edits.push({ path, before, after: newLabel(some) });
			continue;
		}
		const edited = editLabel(before, some);
		if (!edited.ok) return fail({ code: 'not-editable', found: `label.${language}.md` });
		edits.push({ path, before, after: edited.value });
	}
	return ok(edits);
}

function newFacts(facts: readonly FieldEdit[]): string {
	const value = (...path: string[]): string | null => {
		const found = facts.find((edit) => edit.path.join() === path.join())?.value;
		return found === undefined || found === null ? null : yamlScalar(found);
	};
	const line = (key: string): string[] => (value(key) === null ? [] : [`${key}: ${value(key)}`]);
	const declared = facts
		.filter(({ path, value: one }) => path[0] === 'declared' && one !== null)
		.map(({ path, value: one }) => `${path[1]}: ${yamlScalar(one as number)}`);
	const days = facts
		.filter(({ path, value: one }) => path[0] === 'show' && one !== null)
		.map(({ path, value: one }) => `${path[1]}: ${yamlScalar(one as string)}`);
	return [
		'# yaml-language-server: $schema=../../.schemas/specimen.json',
		...['status'].flatMap(line),
		...(days.length > 0 ? [`show: { ${days.join(', ')} }`] : []),
		...['accession', 'group', 'part', 'preservation', 'bed', 'jaw_place'].flatMap(line),
		`identified: { by: ${value('identified', 'by')}, certainty: ${value('identified', 'certainty')} }`,
		'shape:',
		'  scan:',
		`    file: ${value('shape', 'scan', 'file')}`,
		`    units: ${value('shape', 'scan', 'units')}`,
		...(declared.length > 0 ? [`declared: { ${declared.join(', ')} }`] : []),
		...['licence', 'rights_holder', 'sources'].flatMap(line),
		'',
	].join('\n');
}
