import { parse } from 'csv-parse/sync';

export interface ReadTable {
	rowType: string;
	terms: string[];
	/** values by term, and the core's id under `id` */
	rows: Record<string, string>[];
}

/**
 * Reads an archive by the rules of the Darwin Core Text Guide alone (http://rs.tdwg.org/dwc/terms/guides/text/): what
 * meta.xml says of encoding, signs, header lines, columns and defaults, and nothing else. Knows nothing of how it
 * was written.
 */
export function readArchive(files: Readonly<Record<string, Uint8Array>>): {
	core: ReadTable;
	extensions: ReadTable[];
	metadata: string;
} {
	const meta = new TextDecoder('utf-8', { fatal: true }).decode(files['meta.xml']);
	const archive = /<archive\b([^>]*)>([\s\S]*)<\/archive>/.exec(meta);
	if (!archive) throw new Error('readArchive: no archive element');
	if (attributes(archive[1]).xmlns !== 'http://rs.tdwg.org/dwc/text/') throw new Error('readArchive: xmlns');
	const tables = (name: string): ReadTable[] =>
		[...archive[2].matchAll(new RegExp(`<${name}\\b([^>]*)>([\\s\\S]*?)</${name}>`, 'g'))].map(
			([, head, inner]) => readTable(files, attributes(head), inner),
		);
	const [core, ...more] = tables('core');
	if (!core || more.length > 0) throw new Error('readArchive: exactly one core');
	return {
		core,
		extensions: tables('extension'),
		metadata: attributes(archive[1]).metadata ?? 'metadata.xml',
	};
}

function readTable(
	files: Readonly<Record<string, Uint8Array>>,
	asked: Record<string, string>,
	inner: string,
): ReadTable {
	const sign = (text: string): string =>
		text.replace(/\\n/g, '\n').replace(/\\r/g, '\r').replace(/\\t/g, '\t');
	const fields = [...inner.matchAll(/<field\b([^>]*)\/>/g)].map(([, text]) => attributes(text));
	const [, idText] = /<(?:id|coreid)\b([^>]*)\/>/.exec(inner) ?? [];
	const id = Number(attributes(idText ?? '').index);
	const locations = [...inner.matchAll(/<location>([^<]*)<\/location>/g)].map(([, name]) => unescape(name));
	const rows = locations.flatMap((name) => {
		const text = new TextDecoder(asked.encoding ?? 'UTF-8', { fatal: true }).decode(files[name]);
		const records = parse(text, {
			delimiter: sign(asked.fieldsTerminatedBy ?? ','),
			record_delimiter: sign(asked.linesTerminatedBy ?? '\\n'),
			quote: asked.fieldsEnclosedBy ?? '"',
		}) as string[][];
		return records.slice(Number(asked.ignoreHeaderLines ?? 0));
	});
	return {
		rowType: asked.rowType,
		terms: fields.map(({ term }) => term),
		rows: rows.map((cells) =>
			Object.fromEntries([
				['id', cells[id]],
				...fields.map(({ term, index, default: fallback }) => [
					term,
					(index === undefined ? '' : cells[Number(index)]) || (fallback ?? ''),
				]),
			]),
		),
	};
}

const attributes = (text: string): Record<string, string> =>
	Object.fromEntries(
		[...text.matchAll(/([\w:]+)="([^"]*)"/g)].map(([, name, value]) => [name, unescape(value)]),
	);

const unescape = (text: string): string =>
	text
		.replace(/&lt;/g, '<')
		.replace(/&gt;/g, '>')
		.replace(/&quot;/g, '"')
		.replace(/&amp;/g, '&');
