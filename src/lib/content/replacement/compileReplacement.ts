import { z } from 'zod';
import { judgeBase } from '../../domain/replacement/judgeBase';
import { checkForm } from '../../domain/tooth/checkForm';
import { checkFields } from '../checkFields';
import { formOf, type Reference } from '../compileSpecimen';
import { idFrom, placeOf } from '../explainIssue';
import { fieldPath } from '../fieldPath';
import { finding, type Finding } from '../finding';
import { formFinding } from '../formFinding';
import type { Places, YamlResult } from '../readYaml';
import { ID_PATTERN, type ModelInFile } from '../schemas';
import { entryTextSchema, FIXED_IDS, REPLACEMENT_SCHEMAS, type InFile } from './schemas';
import { REPLACEMENT_TABLES, type EntryText, type ReplacementTable } from './types';

export interface CompiledEntry {
	/** as the schema gives it; absent when the entry has errors */
	value?: unknown;
	/** every source that the entry names, as written */
	sources: Reference[];
}

export type CompiledTable = Map<string, CompiledEntry>;

const entries = (value: unknown) => Object.entries(value as Record<string, unknown>);

/** Checks one table of content/replacement by itself: one bad entry leaves out that entry. */
export function compileReplacementTable(
	table: ReplacementTable,
	yaml: YamlResult,
): { compiled: CompiledTable; findings: Finding[] } {
	const compiled: CompiledTable = new Map();
	const findings: Finding[] = [];
	const names = FIXED_IDS[table];
	for (const [id, raw] of entries(yaml.value)) {
		const place = placeOf(yaml.places, [id], 'key');
		if (names && !names.includes(id)) {
			findings.push(finding('fixed-name', place, id, { found: id, names }));
			continue;
		}
		if (!ID_PATTERN.test(id)) {
			findings.push(finding('bad-id', place, id, { found: id, meant: idFrom(id) }));
			continue;
		}
		const schema: z.ZodType = REPLACEMENT_SCHEMAS[table];
		const checked = checkFields(schema, raw, yaml.places, [id]);
		const own = [...checked.findings];
		if (checked.value !== undefined)
			own.push(...meaning(table, id, checked.value as Record<string, unknown>, yaml.places));
		findings.push(...own);
		const good = own.every(({ severity }) => severity !== 'error');
		compiled.set(id, { value: good ? checked.value : undefined, sources: sourcesIn(raw, [id]) });
	}
	return { compiled, findings };
}

/** Sources named anywhere in an entry. */
function sourcesIn(value: unknown, path: (string | number)[]): Reference[] {
	if (typeof value !== 'object' || value === null) return [];
	return Object.entries(value).flatMap(([key, inner]) => {
		const here = [...path, Array.isArray(value) ? Number(key) : key];
		const listed = path.length > 1 && path[path.length - 1] === 'sources';
		if (typeof inner === 'string') return key === 'source' || listed ? [{ id: inner, path: here }] : [];
		return sourcesIn(inner, here);
	});
}

/** What no schema can say. */
function meaning(
	table: ReplacementTable,
	id: string,
	value: Record<string, unknown>,
	places: Places,
): Finding[] {
	const found: Finding[] = [];
	const at = (...path: string[]) => placeOf(places, [id, ...path], 'key');
	const ranges = (inner: unknown, path: string[]): void => {
		if (typeof inner !== 'object' || inner === null || Array.isArray(inner)) return;
		const { from, to, source } = inner as { from?: number; to?: number; source?: string };
		if (source !== undefined && from !== undefined && to !== undefined && from > to) {
			const steps = path.map((step) => step.replace(/([A-Z])/g, (c) => `_${c.toLowerCase()}`));
			const name = fieldPath([id, ...steps]);
			found.push(finding('range-swapped', at(...steps), name, { path: steps.join('.'), from, to }));
		} else for (const [key, next] of Object.entries(inner)) ranges(next, [...path, key]);
	};
	if (table !== 'mysteries' && table !== 'wear') ranges(value, []);

	const form = (key: string, model: ModelInFile | undefined): void => {
		const problem = model && checkForm(formOf(model));
		if (problem) found.push(formFinding(problem, (path) => placeOf(places, path), [id, key]));
	};
	if (table === 'jaws') {
		const { positions, spacing, spacings } = value as {
			positions: number;
			spacing?: number;
			spacings?: number[];
		};
		if ((spacing === undefined) === (spacings === undefined))
			found.push(finding('spacing-missing', at(), id, null));
		else if (spacings && spacings.length !== positions - 1)
			found.push(
				finding('spacings-count', at('spacings'), `${id}.spacings`, {
					found: spacings.length,
					needed: positions - 1,
				}),
			);
	}
	if (table === 'slices') {
		const { inUse, successor } = value as { inUse: { from: number }; successor?: { from: number } };
		if (successor && successor.from >= inUse.from)
			found.push(
				finding('successor-older', at('successor'), `${id}.successor`, {
					inUse: inUse.from,
					successor: successor.from,
				}),
			);
	}
	if (table === 'mysteries') {
		const { model, root, base, tip, answer } = value as unknown as InFile<'mysteries'>;
		form('model', model);
		const { verdict } = judgeBase({ root, base, tip });
		if (verdict !== answer)
			found.push(finding('answer-disagrees', at('answer'), `${id}.answer`, { answer, verdict }));
	}
	if (table === 'wear') {
		const { tooth, opposing } = value as unknown as InFile<'wear'>;
		form('tooth', tooth);
		form('opposing', opposing);
	}
	return found;
}

/** Words by table and entry. */
export type CompiledEntryWords = Map<ReplacementTable, Map<string, EntryText>>;

/** Checks one language's words for the entries: one bad text leaves out that text. */
export function compileReplacementWords(yaml: YamlResult): {
	compiled: CompiledEntryWords;
	findings: Finding[];
} {
	const compiled: CompiledEntryWords = new Map();
	const findings: Finding[] = [];
	for (const [table, raw] of entries(yaml.value)) {
		const place = placeOf(yaml.places, [table], 'key');
		if (!(REPLACEMENT_TABLES as readonly string[]).includes(table)) {
			findings.push(finding('fixed-name', place, table, { found: table, names: REPLACEMENT_TABLES }));
			continue;
		}
		if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
			const example = 'germ: { name: Germ, line: A soft bud }';
			findings.push(finding('not-fields', place, table, { path: table, example }));
			continue;
		}
		const texts = new Map<string, EntryText>();
		for (const [id, value] of entries(raw)) {
			const checked = checkFields(entryTextSchema, value, yaml.places, [table, id]);
			findings.push(...checked.findings);
			if (checked.value && checked.findings.length === 0) texts.set(id, checked.value);
		}
		compiled.set(table as ReplacementTable, texts);
	}
	return { compiled, findings };
}
