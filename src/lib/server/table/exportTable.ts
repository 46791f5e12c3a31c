import { stringify } from 'csv-stringify/sync';
import type { Column } from './columns';
import { guardFormula } from './guardFormula';
import { specimenCells, type SpecimenFiles } from './specimenCells';

/**
 * All specimens as a table, one row each, the sort of file that spreadsheets open with a double click: UTF-8 with its
 * mark, lines ended as Windows does. With `;` numbers have a decimal comma, as French and Spanish spreadsheets want.
 * Reading it back changes nothing.
 */
export function exportTable(
	specimens: readonly SpecimenFiles[],
	columns: readonly Column[],
	delimiter: ',' | ';',
): string {
	const rows = specimens.map((files) => {
		const cells = specimenCells(files, columns);
		return columns.map(({ key, kind }) => {
			const cell = cells.get(key)!;
			if (kind === 'number') return delimiter === ';' ? cell.replace('.', ',') : cell;
			// a hyphen alone would take a value away
			return cell === '-' ? "'-" : guardFormula(cell);
		});
	});
	const table = stringify([columns.map(({ key }) => key), ...rows], {
		delimiter,
		record_delimiter: 'windows',
		quoted_match: /[\r\n]/,
	});
	return `\uFEFF${table}`;
}
