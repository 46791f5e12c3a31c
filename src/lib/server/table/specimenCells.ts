import { valueAt } from '../../content/fieldPath';
import { readYaml } from '../../content/readYaml';
import type { Column } from './columns';
import { readLabel } from './labelFile';

/** The files of one specimen, as they are: specimen.yaml and its label in each language. */
export interface SpecimenFiles {
	id: string;
	facts: string;
	/** by language */
	labels: ReadonlyMap<string, string>;
}

/** Between the items of a list in a cell. */
export const LIST_SIGN = '; ';

/** What each column says of a specimen, as text; empty where nothing is said. */
export function specimenCells(files: SpecimenFiles, columns: readonly Column[]): Map<string, string> {
	const facts = readYaml(files.facts.replace(/^\uFEFF/, '')).value;
	const labels = new Map([...files.labels].map(([language, text]) => [language, readLabel(text)] as const));
	return new Map(
		columns.map(({ key, path, label }) => {
			if (label) return [key, labels.get(label.language)?.[label.field] ?? ''] as const;
			return [key, path ? cellOf(valueAt(facts, [...path])) : files.id] as const;
		}),
	);
}

function cellOf(value: unknown): string {
	if (Array.isArray(value)) return value.map(cellOf).join(LIST_SIGN);
	return typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
}
