import { stringify } from 'csv-stringify/sync';
import type { Exhibit, Specimen } from '../../content/exhibit';
import { emlXml } from './emlXml';
import { metaXml, type ArchiveTable } from './metaXml';
import {
	measurementRecords,
	mediaRecords,
	occurrenceRecords,
	type ServedMedia,
	type TermRecord,
} from './records';

const ROW_TYPES = {
	occurrence: 'http://rs.tdwg.org/dwc/terms/Occurrence',
	measurement: 'http://rs.tdwg.org/dwc/terms/MeasurementOrFact',
	media: 'http://rs.tdwg.org/ac/terms/Multimedia',
} as const;

/**
 * The files of a Darwin Core archive by name: occurrences as the core, measures and scans as extensions, `meta.xml`
 * that says what the columns are, and `eml.xml` that describes the whole. A table without lines is left out. `made` is
 * the day, YYYY-MM-DD.
 */
export function darwinCoreFiles(
	exhibit: Exhibit,
	served: (specimen: Specimen) => ServedMedia,
	made: string,
): Record<string, string> {
	const files: Record<string, string> = {};
	const table = (
		rowType: string,
		file: string,
		records: readonly TermRecord[],
		isCore: boolean,
	): ArchiveTable | null => {
		const [first] = records;
		if (!first && !isCore) return null;
		const columns = Object.keys(first ?? { 'http://rs.tdwg.org/dwc/terms/occurrenceID': '' });
		const head = columns.map((term) =>
			term.slice(Math.max(term.lastIndexOf('/'), term.lastIndexOf('#')) + 1),
		);
		files[file] = stringify([head, ...records.map((record) => columns.map((term) => record[term]))], {
			quoted_match: /[\r\n]/,
		});
		return { rowType, file, terms: isCore ? columns : columns.slice(1) };
	};
	const core = table(ROW_TYPES.occurrence, 'occurrence.csv', occurrenceRecords(exhibit), true)!;
	const extensions = [
		table(ROW_TYPES.measurement, 'measurement.csv', measurementRecords(exhibit), false),
		table(ROW_TYPES.media, 'media.csv', mediaRecords(exhibit, served), false),
	].filter((one) => one !== null);
	files['meta.xml'] = metaXml(core, extensions);
	files['eml.xml'] = emlXml(exhibit, made);
	return files;
}
