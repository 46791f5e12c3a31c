import { idFrom } from '../../content/explainIssue';
import { createContentCache, loadContent } from '../../content/loadContent';
import type { ContentReader } from '../../content/draft';
import { ID_PATTERN } from '../../content/schemas';
import { fail, ok, type Result } from '../../domain/result';
import { canonicalJson } from '../canonicalJson';
import { contentWith } from '../contentWith';
import { asWords } from '../desk/checkChanges';
import { sha256 } from '../shapeHash';
import { mapColumns, tableColumns } from './columns';
import { editSpecimenFiles } from './editSpecimenFiles';
import { unguardFormula } from './guardFormula';
import { bodyOf } from './labelFile';
import { readCell } from './readCell';
import { hasDecimalComma } from './readNumber';
import type { Table } from './readTable';
import { specimenCells, type SpecimenFiles } from './specimenCells';
import type { CellValue, FileEdit, ImportPlan, ReportRow, TableProblem } from '../../content/tableImport';

export interface ImportContext {
	reader: ContentReader;
	specimens: readonly SpecimenFiles[];
	/** folders to be left alone */
	unreadable?: ReadonlySet<string>;
	/** codes, the exhibit's first language first */
	languages: readonly string[];
}

interface PlannedRow {
	row: ReportRow;
	edits: FileEdit[];
}

/**
 * What a table would change, and nothing written yet: a line of report for each row, and the new text of each file.
 * Every change is put to the content check as if it were saved; a row that would make an error is refused whole.
 */
export async function planImport(
	context: ImportContext,
	table: Table,
	chosen: Readonly<Record<number, string | null>> = {},
): Promise<Result<ImportPlan, TableProblem>> {
	const columns = tableColumns(context.languages);
	const mapped = mapColumns(table.header, table.rows, columns, chosen);
	if (!mapped.some(({ column }) => column === 'id' || column === 'accession'))
		return fail({ code: 'no-key-column' });
	const byKey = new Map(columns.map((column) => [column.key, column]));
	const numbers = mapped.flatMap(({ column }, i) =>
		column && byKey.get(column)!.kind === 'number' ? table.rows.map(({ cells }) => cells[i] ?? '') : [],
	);
	const comma = hasDecimalComma(numbers) ?? (table.delimiter === ';' ? true : undefined);
	const known = new Map(context.specimens.map((files) => [files.id, files]));
	const cellsOf = new Map(context.specimens.map((files) => [files.id, specimenCells(files, columns)]));
	const byAccession = new Map([...cellsOf].map(([id, cells]) => [cells.get('accession')!, id]));
	const unreadable = context.unreadable ?? new Set<string>();
	const seen = new Set<string>();

	const planned = table.rows.map(({ line, cells }): PlannedRow => {
		const row: ReportRow = { line, id: '', accession: '', outcome: 'refused', changes: [], notes: [] };
		const refuse = (why: TableProblem): PlannedRow => ({ row: { ...row, why }, edits: [] });
		const cellIn = (key: string): string => {
			const i = mapped.findIndex(({ column }) => column === key);
			return i < 0 ? '' : unguardFormula((cells[i] ?? '').trim());
		};
		row.accession = cellIn('accession');
		row.id = cellIn('id') || (byAccession.get(row.accession) ?? (row.accession ? idFrom(row.accession) : ''));
		const files = known.get(row.id);
		const now = cellsOf.get(row.id) ?? new Map<string, string>();
		const values = new Map<string, CellValue>();
		let wrong: TableProblem | undefined;
		mapped.forEach(({ column, factor }, i) => {
			if (!column) return;
			const cell = (cells[i] ?? '').trim();
			// as it is, even where it would not be taken as new
			if (cell === '' || (now.has(column) && bodyOf(unguardFormula(cell)) === now.get(column))) return;
			const read = readCell(cell, byKey.get(column)!, factor ?? 1, comma);
			if (!read.ok) wrong ??= read.problem;
			else if (read.value !== undefined) values.set(column, read.value);
		});
		if (wrong) return refuse(wrong);
		if (row.id === '') return refuse({ code: 'no-key' });
		if (!ID_PATTERN.test(row.id) || row.id.length > 60)
			return refuse({ code: 'bad-id', found: row.id.slice(0, 60) });
		if (seen.has(row.id)) return refuse({ code: 'row-twice', found: row.id });
		seen.add(row.id);
		values.delete('id');
		if (unreadable.has(row.id)) return refuse({ code: 'not-editable', found: row.id });
		if (files) row.accession ||= now.get('accession')!;
		const changed = [...values].filter(([key, value]) => asCell(value) !== (now.get(key) ?? ''));
		row.changes = changed.map(([column, value]) => ({
			column,
			from: now.get(column) ?? '',
			to: asCell(value),
		}));
		if (files && changed.length === 0) return { row: { ...row, outcome: 'unchanged' }, edits: [] };
		const edited = editSpecimenFiles(row.id, files, new Map(changed), columns, context.languages);
		if (!edited.ok) return refuse(edited.problem);
		return { row: { ...row, outcome: files ? 'changed' : 'new' }, edits: edited.value };
	});
	await putToCheck(context.reader, planned);
	const edits = planned.flatMap((one) => one.edits);
	return ok({
		columns: mapped,
		rows: planned.map(({ row }) => row),
		edits,
		hash: sha256(canonicalJson(edits)),
	});
}

const asCell = (value: CellValue): string =>
	value === null ? '' : Array.isArray(value) ? value.join('; ') : String(value);

/** Refuses rows whose files would get an error that they do not have, until none is left. */
async function putToCheck(reader: ContentReader, planned: PlannedRow[]): Promise<void> {
	const cache = createContentCache();
	const before = new Set((await loadContent(reader, cache)).problems.map(asWords));
	for (;;) {
		const edits = planned.flatMap((one) => one.edits);
		if (edits.length === 0) return;
		const after = new Map(edits.map(({ path, after: text }) => [path, text]));
		const { problems } = await loadContent(contentWith(reader, after), cache);
		const fresh = problems.filter((problem) => !before.has(asWords(problem)));
		let refused = false;
		for (const one of planned) {
			if (one.edits.length === 0) continue;
			const mine = fresh.filter(({ file }) => file.startsWith(`specimens/${one.row.id}/`));
			// a new specimen's scan may be copied in later
			const wrong = mine.find(
				({ severity, id }) => severity === 'error' && !(id === 'missing-scan' && one.row.outcome === 'new'),
			);
			if (wrong) {
				const message = `${wrong.message} ${wrong.remedy}`;
				one.row = { ...one.row, outcome: 'refused', why: { code: 'check', message }, notes: [] };
				one.edits = [];
				refused = true;
			} else one.row.notes = mine.map(({ file, message }) => `${file.split('/').pop()}: ${message}`);
		}
		if (!refused) return;
	}
}
