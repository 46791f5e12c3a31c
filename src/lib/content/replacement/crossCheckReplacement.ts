import { formOf } from '../compileSpecimen';
import { report, type ContentFiles } from '../contentFiles';
import { keepSources, type Items } from '../crossCheckItems';
import type { Language } from '../crossCheckWords';
import { placeOf } from '../explainIssue';
import { FILE_START } from '../finding';
import { suggest } from '../suggest';
import type { Source } from '../exhibit';
import { LIFE_STAGES } from '../../domain/replacement/lifeStage';
import type { InFile } from './schemas';
import {
	REPLACEMENT_TABLES,
	type EntryText,
	type Quantity,
	type ReplacementContent,
	type ReplacementTable,
} from './types';

export const tablePath = (table: ReplacementTable) => `replacement/${table}.yaml`;
export const wordsPath = (language: string) => `replacement/${language}.yaml`;

/** Everything of content/replacement that can be shown; undefined when the folder has none of its tables. */
export function crossCheckReplacement(
	files: ContentFiles,
	languages: readonly Language[],
	items: Items,
): ReplacementContent | undefined {
	const present = REPLACEMENT_TABLES.filter((table) => files.byPath.has(tablePath(table)));
	if (present.length === 0) return undefined;
	const made = Object.fromEntries(
		REPLACEMENT_TABLES.map((table) => [table, entriesOf(files, languages, items, table)]),
	) as Record<ReplacementTable, unknown[]>;
	unusedWords(files, languages);
	const content = made as unknown as ReplacementContent;
	const order = (id: string) => LIFE_STAGES.indexOf(id as (typeof LIFE_STAGES)[number]);
	return { ...content, stages: content.stages.sort((a, b) => order(a.id) - order(b.id)) };
}

function entriesOf(
	files: ContentFiles,
	languages: readonly Language[],
	items: Items,
	table: ReplacementTable,
): object[] {
	const path = tablePath(table);
	const compiled = files.byPath.get(path)?.compiled?.replacement;
	const made: object[] = [];
	for (const [id, { value, sources }] of compiled ?? []) {
		const kept = keepSources(files, items, path, sources);
		const text = textOf(files, languages, table, id);
		if (value === undefined || !kept || !text) continue;
		const entry = MAKE[table](value as never, (q) => quantity(q, items.sources));
		// a number whose source cannot be shown is not shown
		if (entry) made.push({ id, ...entry, sources: own(value, items.sources), text });
	}
	return made;
}

const own = (value: unknown, known: ReadonlyMap<string, Source>): string[] =>
	((value as { sources?: string[] }).sources ?? []).filter((id) => known.has(id));

interface QuantityInFile {
	from: number;
	to?: number;
	source: string;
	tag?: Quantity['tag'];
}
type Quantities = (q: QuantityInFile) => Quantity | undefined;

/** The weaker of a number's own tag and its source's. */
function quantity(q: QuantityInFile, sources: ReadonlyMap<string, Source>): Quantity | undefined {
	const source = sources.get(q.source);
	if (!source) return undefined;
	return { from: q.from, to: q.to ?? q.from, source: q.source, tag: q.tag ?? source.tag };
}

/** `{ [key]: made }`, or nothing where there is nothing. */
const maybe = <K extends string, T>(key: K, value: T | undefined): { [k in K]?: T } =>
	(value === undefined ? {} : { [key]: value }) as { [k in K]?: T };

const MAKE: { [T in ReplacementTable]: (value: InFile<T>, of: Quantities) => object | null } = {
	animals: ({ kind, living, latin, period_d, age, line_um, positions, successors }, of) => {
		const days = age && of(age.days);
		return {
			kind,
			living,
			...maybe('latin', latin),
			...maybe('period_d', period_d && of(period_d)),
			...maybe('age', days && age && { kind: age.kind, days }),
			...maybe('line_um', line_um && of(line_um)),
			...maybe('positions', positions && of(positions)),
			...maybe('successors', successors && of(successors)),
		};
	},
	stages: () => ({}),
	arrangements: () => ({}),
	jaws: ({ positions, spacing, spacings, period_d, spacingSource }, of) => ({
		positions,
		spacing: spacing ?? spacings ?? 2,
		period_d,
		...maybe('spacingSource', spacingSource && of(spacingSource)),
	}),
	slices: ({ inUse, successor, line_um, seed, edgeLoss }, of) => {
		const [lines, width, loss] = [of(inUse), of(line_um), of(edgeLoss)];
		if (!lines || !width || !loss) return null;
		return {
			inUse: lines,
			...maybe('successor', successor && of(successor)),
			line_um: width,
			seed,
			edgeLoss: loss,
		};
	},
	counts: ({ positions, period_d, lastPeriod_d, years, tooth_mm3 }, of) => {
		const [places, period, time, tooth] = [of(positions), of(period_d), of(years), of(tooth_mm3)];
		if (!places || !period || !time || !tooth) return null;
		return {
			positions: places,
			period_d: period,
			...maybe('lastPeriod_d', lastPeriod_d && of(lastPeriod_d)),
			years: time,
			tooth_mm3: tooth,
		};
	},
	mysteries: ({ model, preservation, root, base, tip, answer }) => ({
		form: formOf(model),
		preservation,
		signs: { root, base, tip },
		answer,
	}),
	wear: ({ tooth, opposing, closing_deg, spacing_mm, stumpShare }) => ({
		tooth: formOf(tooth),
		...maybe('opposing', opposing && formOf(opposing)),
		closing_deg,
		spacing_mm,
		stumpShare,
	}),
};

/** Words of an entry by language; null when those of the first language are missing. */
function textOf(
	files: ContentFiles,
	languages: readonly Language[],
	table: ReplacementTable,
	id: string,
): Record<string, EntryText> | null {
	const [first, ...others] = languages;
	const words = (code: string) => files.byPath.get(wordsPath(code))?.compiled?.replacementWords;
	const place = placeOf(files.byPath.get(tablePath(table))!.compiled!.places, [id], 'key');
	const own = words(first.code)?.get(table)?.get(id);
	if (!own) {
		report(files, tablePath(table), 'words-missing', place, id, {
			table,
			found: id,
			file: wordsPath(first.code),
		});
		return null;
	}
	const text: Record<string, EntryText> = { [first.code]: own };
	for (const { code } of others) {
		const path = wordsPath(code);
		const translated = words(code)?.get(table)?.get(id);
		if (translated) text[code] = translated;
		else if (
			files.byPath.get(path)?.compiled &&
			!files.byPath.get(path)!.compiled!.places.has(`${table}.${id}`)
		)
			report(files, path, 'text-not-translated', FILE_START, `${table}.${id}`, {
				key: `${table}.${id}`,
				language: first,
				shown: own.name,
			});
	}
	return text;
}

/** Words whose entry does not exist, and languages without a file. */
function unusedWords(files: ContentFiles, languages: readonly Language[]): void {
	const [first, ...others] = languages;
	for (const language of others) {
		const path = wordsPath(language.code);
		if (files.byPath.has(path) || files.meant.has(path)) continue;
		report(files, path, 'missing-translation', FILE_START, '', {
			file: wordsPath(first.code),
			language,
			first: first,
			part: 'words',
		});
	}
	for (const { code } of languages) {
		const path = wordsPath(code);
		const compiled = files.byPath.get(path)?.compiled;
		for (const [table, texts] of compiled?.replacementWords ?? []) {
			const known = files.byPath.get(tablePath(table))?.compiled?.places;
			const names = [...(files.byPath.get(tablePath(table))?.compiled?.replacement?.keys() ?? [])];
			for (const id of texts.keys()) {
				if (known?.has(id)) continue;
				const place = placeOf(compiled!.places, [table, id], 'key');
				const meant = suggest(
					id,
					names.filter((name) => !texts.has(name)),
				);
				report(files, path, 'text-not-used', place, `${table}.${id}`, {
					key: id,
					meant,
					file: tablePath(table),
				});
			}
		}
	}
}
