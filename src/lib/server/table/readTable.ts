import { parse } from 'csv-parse/sync';
import { fail, ok, type Result } from '../../domain/result';
import { decodeTable, type TableEncoding } from './decodeTable';
import type { TableProblem } from '../../content/tableImport';

export type Delimiter = ',' | ';' | '\t';

export interface Table {
	encoding: TableEncoding;
	delimiter: Delimiter;
	header: string[];
	/** `line` is where the row begins in the file, from 1 */
	rows: { line: number; cells: string[] }[];
}

/** Largest table, bytes; 500 specimens with three languages of labels need about 1.5 MB. */
export const MOST_TABLE_BYTES = 8_000_000;
const MOST_ROWS = 5000;
const MOST_COLUMNS = 200;

/** Reads a CSV or TSV file of a spreadsheet, whatever its encoding and its sign between cells. */
export function readTable(bytes: Uint8Array): Result<Table, TableProblem> {
	if (bytes.length > MOST_TABLE_BYTES) return fail({ code: 'too-large' });
	// a workbook, a picture: not text
	if (bytes[0] === 0x50 && bytes[1] === 0x4b) return fail({ code: 'workbook' });
	const decoded = decodeTable(bytes);
	const { encoding } = decoded;
	const all = decoded.text.replace(/\r\n?/g, '\n');
	// a first line "sep=;" tells the spreadsheet, and us, the sign between cells
	const told = /^sep=([,;\t])\n/i.exec(all);
	const text = told ? all.slice(told[0].length) : all;
	const linesBefore = told ? 1 : 0;
	const delimiter = (told?.[1] as Delimiter | undefined) ?? findDelimiter(text);
	let records: { record: string[]; info: { lines: number } }[];
	try {
		records = parse(text, {
			delimiter,
			info: true,
			relax_column_count: true,
			skip_empty_lines: true,
			record_delimiter: '\n',
		}) as unknown as typeof records;
	} catch (cause) {
		const { lines } = cause as { lines?: number };
		return fail({ code: 'quotes', line: (lines ?? 1) + linesBefore });
	}
	const [first, ...rest] = records;
	if (!first) return fail({ code: 'empty' });
	const header = first.record.map((cell) => cell.trim());
	if (header.length > MOST_COLUMNS || rest.length > MOST_ROWS) return fail({ code: 'too-large' });
	return ok({
		encoding,
		delimiter,
		header,
		rows: rest
			.filter(({ record }) => record.some((cell) => cell.trim() !== ''))
			.map(({ record, info }) => ({
				line: info.lines - breaks(record) + linesBefore,
				cells: record,
			})),
	});
}

const breaks = (record: readonly string[]): number =>
	record.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);

/** The sign that stands most often in the first line, outside quotes. */
function findDelimiter(text: string): Delimiter {
	const counts: Record<Delimiter, number> = { ';': 0, '\t': 0, ',': 0 };
	let quoted = false;
	for (const sign of text) {
		if (sign === '"') quoted = !quoted;
		else if (!quoted && sign === '\n') break;
		else if (!quoted && sign in counts) counts[sign as Delimiter]++;
	}
	return (Object.keys(counts) as Delimiter[]).reduce((best, sign) =>
		counts[sign] > counts[best] ? sign : best,
	);
}
