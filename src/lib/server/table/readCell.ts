import { fail, ok, type Result } from '../../domain/result';
import type { Column } from './columns';
import { isFormula, unguardFormula } from './guardFormula';
import { bodyOf } from './labelFile';
import { readNumber } from './readNumber';
import type { CellValue, TableProblem } from '../../content/tableImport';

/**
 * What a cell says; undefined for an empty one, which leaves the value as it is; null for a hyphen alone, which takes
 * it away.
 */
export function readCell(
	raw: string,
	column: Column,
	factor: number,
	comma: boolean | undefined,
): Result<CellValue | undefined, TableProblem> {
	const cell = raw.trim();
	const shown = { column: column.key, found: cell.slice(0, 60) };
	if (cell === '') return ok(undefined);
	if (cell === '-') return column.needed ? fail({ code: 'cannot-be-emptied', ...shown }) : ok(null);
	if (/[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F\uFFFD]/.test(cell))
		return fail({ code: 'not-text', ...shown });
	if (column.kind === 'number') {
		const number = readNumber(cell, factor, comma);
		return typeof number === 'number' ? ok(number) : fail({ code: number, ...shown });
	}
	if (isFormula(cell)) return fail({ code: 'formula', ...shown });
	const text = unguardFormula(cell);
	if (column.kind === 'body') return ok(bodyOf(text));
	if (/[\r\n]/.test(text)) return fail({ code: 'line-break', ...shown });
	if (column.kind === 'list') {
		const items = text
			.split(/[;,|\s]+/)
			.map((item) => item.trim())
			.filter(Boolean);
		return ok(items);
	}
	if (column.kind === 'choice') {
		const plain = text.toLowerCase().replace(/[\s_]+/g, '-');
		const choice = column.choices!.find((one) => one === plain);
		return choice === undefined
			? fail({ code: 'not-a-choice', ...shown, choices: column.choices!.join(', ') })
			: ok(choice);
	}
	return ok(text);
}
