import { CERTAINTIES, PARTS, PRESERVATIONS, STATUSES } from '../../content/exhibit';
import { JAW_PLACES } from '../../domain/quiz/question';
import { mmPer } from './readNumber';
import type { MappedColumn } from '../../content/tableImport';

export interface Column {
	key: string;
	kind: 'text' | 'number' | 'list' | 'choice' | 'body';
	choices?: readonly string[];
	/** where it stands in specimen.yaml */
	path?: readonly string[];
	/** where it stands in a label */
	label?: { language: string; field: 'title' | 'short' | 'alt' | 'text' };
	/** may not be taken away */
	needed?: boolean;
	/** other names that tables give it; the trade's own words */
	also?: readonly string[];
}

const FACTS: readonly Column[] = [
	{
		key: 'accession',
		kind: 'text',
		path: ['accession'],
		needed: true,
		also: [
			'accession number',
			'catalogue number',
			'catalog number',
			'inventory number',
			'numéro d’inventaire',
			'número de inventario',
		],
	},
	{ key: 'group', kind: 'text', path: ['group'], needed: true, also: ['groupe', 'grupo'] },
	{ key: 'part', kind: 'choice', choices: PARTS, path: ['part'], needed: true, also: ['partie', 'parte'] },
	{
		key: 'preservation',
		kind: 'choice',
		choices: PRESERVATIONS,
		path: ['preservation'],
		needed: true,
		also: ['colour', 'conservation', 'conservación'],
	},
	{ key: 'bed', kind: 'text', path: ['bed'], also: ['horizon', 'couche', 'capa'] },
	{ key: 'jaw_place', kind: 'choice', choices: JAW_PLACES, path: ['jaw_place'], also: ['position in jaw'] },
	{
		key: 'identified_by',
		kind: 'text',
		path: ['identified', 'by'],
		needed: true,
		also: ['determined by', 'déterminé par', 'determinado por'],
	},
	{
		key: 'certainty',
		kind: 'choice',
		choices: CERTAINTIES,
		path: ['identified', 'certainty'],
		needed: true,
		also: ['certitude', 'certeza'],
	},
	{ key: 'scan_file', kind: 'text', path: ['shape', 'scan', 'file'], needed: true, also: ['scan'] },
	{
		key: 'scan_units',
		kind: 'choice',
		choices: ['um', 'mm', 'cm', 'm', 'in'],
		path: ['shape', 'scan', 'units'],
		needed: true,
	},
	{
		key: 'card_crown_height_mm',
		kind: 'number',
		path: ['declared', 'crown_height_mm'],
		also: ['crown height', 'hauteur de la couronne', 'altura de la corona', 'ch'],
	},
	{
		key: 'card_base_length_mm',
		kind: 'number',
		path: ['declared', 'base_length_mm'],
		also: ['base length', 'crown base length', 'longueur de la base', 'longitud de la base', 'cbl'],
	},
	{
		key: 'card_base_width_mm',
		kind: 'number',
		path: ['declared', 'base_width_mm'],
		also: ['base width', 'crown base width', 'largeur de la base', 'anchura de la base', 'cbw'],
	},
	{ key: 'licence', kind: 'text', path: ['licence'], needed: true, also: ['license', 'licencia', 'rights'] },
	{
		key: 'rights_holder',
		kind: 'text',
		path: ['rights_holder'],
		needed: true,
		also: ['rightsholder', 'titulaire des droits', 'titular de los derechos'],
	},
	{ key: 'sources', kind: 'list', path: ['sources'], needed: true, also: ['references', 'fuentes'] },
	{ key: 'status', kind: 'choice', choices: STATUSES, path: ['status'], also: ['statut', 'estado'] },
	{ key: 'show_from', kind: 'text', path: ['show', 'from'], also: ['montrer du', 'mostrar desde'] },
	{ key: 'show_until', kind: 'text', path: ['show', 'until'], also: ['montrer au', 'mostrar hasta'] },
];

const LABEL_FIELDS = ['title', 'short', 'alt', 'text'] as const;

/** The columns of a table of specimens, in the order in which they are written. The first, `id`, is the folder. */
export const tableColumns = (languages: readonly string[]): Column[] => [
	{ key: 'id', kind: 'text', also: ['folder', 'dossier', 'carpeta'] },
	...FACTS,
	...languages.flatMap((language) =>
		LABEL_FIELDS.map((field): Column => ({
			key: `${field}_${language}`,
			kind: field === 'text' ? 'body' : 'text',
			label: { language, field },
			needed: field === 'title' || field === 'short',
		})),
	),
];

const bare = (text: string): string =>
	text
		.toLowerCase()
		.normalize('NFD')
		.replace(/\p{M}/gu, '')
		.replace(/[^\p{L}\p{N}]+/gu, ' ')
		.trim();

/**
 * Which column each head of a table means. A length must say its unit: "Crown height (mm)", "crown height, cm" or its
 * own key. `chosen` overrules: a key, or null to leave a head out.
 */
export function mapColumns(
	header: readonly string[],
	rows: readonly { cells: readonly string[] }[],
	columns: readonly Column[],
	chosen: Readonly<Record<number, string | null>> = {},
): MappedColumn[] {
	const names = new Map<string, Column>();
	for (const column of columns) {
		for (const name of [column.key, column.key.replace(/_mm$/, ''), ...(column.also ?? [])])
			names.set(bare(name), column);
	}
	const taken = new Set<string>();
	const sampleOf = (i: number): string[] =>
		rows
			.map(({ cells }) => (cells[i] ?? '').trim())
			.filter((cell) => cell !== '')
			.slice(0, 3)
			.map((cell) => (cell.length > 60 ? `${cell.slice(0, 59)}…` : cell));
	return header.map((head, i) => {
		const unit = /(?:[([]\s*|,\s*|[\s_])([a-zµμ"]+)\s*[)\]]?\s*$/i.exec(head);
		const factor = unit ? mmPer(unit[1]) : undefined;
		const name = factor === undefined ? head : head.slice(0, unit!.index);
		const sample = sampleOf(i);
		const wanted = chosen[i];
		if (wanted === null) return { header: head, column: null, leftOut: 'chosen', sample };
		const found =
			wanted === undefined
				? (names.get(bare(head)) ?? names.get(bare(name)))
				: columns.find(({ key }) => key === wanted);
		if (!found) return { header: head, column: null, leftOut: 'unknown', sample };
		if (taken.has(found.key)) return { header: head, column: null, leftOut: 'twice', sample };
		if (found.kind === 'number' && factor === undefined)
			return { header: head, column: null, leftOut: 'no-unit', sample };
		taken.add(found.key);
		return { header: head, column: found.key, ...(found.kind === 'number' ? { factor } : {}), sample };
	});
}
