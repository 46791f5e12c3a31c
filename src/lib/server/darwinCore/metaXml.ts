import { escapeXml } from './escapeXml';

export interface ArchiveTable {
	rowType: string;
	file: string;
	/** URIs of the columns' terms; the first column of an extension is the core's id and has none */
	terms: readonly string[];
}

/**
 * The file that says what the tables of the archive hold. Source: Darwin Core Text Guide
 * (http://rs.tdwg.org/dwc/terms/guides/text/) and its schema tdwg_dwc_text.xsd, which writes `coreid`.
 */
export function metaXml(core: ArchiveTable, extensions: readonly ArchiveTable[]): string {
	const table = (name: 'core' | 'extension', { rowType, file, terms }: ArchiveTable): string[] => [
		`\t<${name} encoding="UTF-8" fieldsTerminatedBy="," linesTerminatedBy="\\n" fieldsEnclosedBy="&quot;" ignoreHeaderLines="1" rowType="${escapeXml(rowType)}">`,
		`\t\t<files><location>${escapeXml(file)}</location></files>`,
		name === 'core' ? '\t\t<id index="0"/>' : '\t\t<coreid index="0"/>',
		...terms.map(
			(term, i) => `\t\t<field index="${name === 'core' ? i : i + 1}" term="${escapeXml(term)}"/>`,
		),
		`\t</${name}>`,
	];
	return [
		'<?xml version="1.0" encoding="UTF-8"?>',
		'<archive xmlns="http://rs.tdwg.org/dwc/text/" metadata="eml.xml">',
		...table('core', core),
		...extensions.flatMap((extension) => table('extension', extension)),
		'</archive>',
		'',
	].join('\n');
}
