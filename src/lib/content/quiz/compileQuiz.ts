import type { z } from 'zod';
import { VERDICTS } from '../../domain/quiz/question';
import { checkFields } from '../checkFields';
import type { Reference } from '../compileSpecimen';
import { idFrom, placeOf } from '../explainIssue';
import { finding, type Finding } from '../finding';
import type { YamlResult } from '../readYaml';
import { ID_PATTERN } from '../schemas';
import { askTextSchema, QUIZ_SCHEMAS, quizSettingsSchema, roundTextSchema, type QuizInFile } from './schemas';
import { QUIZ_TABLES, type AskText, type QuizTable } from './types';

export interface CompiledQuizEntry {
	/** as the schema gives it; absent when the entry has errors */
	value?: unknown;
	sources: Reference[];
}

export type CompiledQuizTable = Map<string, CompiledQuizEntry>;
export type QuizSettings = z.output<typeof quizSettingsSchema>;

const entries = (value: unknown) => Object.entries(value as Record<string, unknown>);
const usable = (findings: readonly Finding[]) => findings.every(({ severity }) => severity !== 'error');

export function compileQuizSettings(yaml: YamlResult): {
	compiled: QuizSettings | null;
	findings: Finding[];
} {
	const { value, findings } = checkFields(quizSettingsSchema, yaml.value, yaml.places);
	return { compiled: value ?? null, findings };
}

/** Checks one table of content/quiz by itself: one bad entry leaves out that entry. */
export function compileQuizTable(
	table: QuizTable,
	yaml: YamlResult,
): { compiled: CompiledQuizTable; findings: Finding[] } {
	const compiled: CompiledQuizTable = new Map();
	const findings: Finding[] = [];
	for (const [id, raw] of entries(yaml.value)) {
		const place = placeOf(yaml.places, [id], 'key');
		if (!ID_PATTERN.test(id)) {
			findings.push(finding('bad-id', place, id, { found: id, meant: idFrom(id) }));
			continue;
		}
		const schema: z.ZodType = QUIZ_SCHEMAS[table];
		const checked = checkFields(schema, raw, yaml.places, [id]);
		const own = [...checked.findings];
		if (table === 'questions' && checked.value !== undefined) {
			const { specimens, right } = checked.value as QuizInFile<'questions'>;
			const at = (key: string) => placeOf(yaml.places, [id, key], 'key');
			const twice = specimens.find((one, i) => specimens.indexOf(one) !== i);
			if (twice)
				own.push(finding('same-specimen-twice', at('specimens'), `${id}.specimens`, { found: twice }));
			if (!specimens.includes(right))
				own.push(finding('right-not-shown', at('right'), `${id}.right`, { right, specimens }));
		}
		findings.push(...own);
		compiled.set(id, { value: usable(own) ? checked.value : undefined, sources: sourcesOf(raw, id) });
	}
	return { compiled, findings };
}

function sourcesOf(raw: unknown, id: string): Reference[] {
	const listed = (raw as { sources?: unknown } | null)?.sources;
	if (!Array.isArray(listed)) return [];
	return listed.flatMap((source: unknown, i) =>
		typeof source === 'string' ? [{ id: source, path: [id, 'sources', i] }] : [],
	);
}

/** Words of claims and questions, and names of rounds, by id. */
export interface CompiledQuizWords {
	claims: Map<string, AskText>;
	questions: Map<string, AskText>;
	rounds: Map<string, { name: string }>;
}

/** Checks one language's words: one bad text leaves out that text. */
export function compileQuizWords(yaml: YamlResult): { compiled: CompiledQuizWords; findings: Finding[] } {
	const compiled: CompiledQuizWords = { claims: new Map(), questions: new Map(), rounds: new Map() };
	const findings: Finding[] = [];
	for (const [table, raw] of entries(yaml.value)) {
		const place = placeOf(yaml.places, [table], 'key');
		if (!isTable(table)) {
			findings.push(finding('fixed-name', place, table, { found: table, names: QUIZ_TABLES }));
			continue;
		}
		if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
			findings.push(
				finding('not-fields', place, table, { path: table, example: 'my-question: { ask: ... }' }),
			);
			continue;
		}
		for (const [id, value] of entries(raw)) {
			if (table === 'rounds') {
				const checked = checkFields(roundTextSchema, value, yaml.places, [table, id]);
				findings.push(...checked.findings);
				if (checked.value && usable(checked.findings)) compiled.rounds.set(id, checked.value);
				continue;
			}
			const checked = checkFields(askTextSchema, value, yaml.places, [table, id]);
			const own = [...checked.findings];
			if (table === 'claims' && checked.value)
				for (const option of VERDICTS)
					if (!checked.value.why[option])
						own.push(
							finding('why-missing', placeOf(yaml.places, [table, id, 'why'], 'key'), `${table}.${id}.why`, {
								option,
								file: '',
							}),
						);
			findings.push(...own);
			if (checked.value && usable(own)) compiled[table].set(id, checked.value);
		}
	}
	return { compiled, findings };
}

const isTable = (name: string): name is QuizTable => (QUIZ_TABLES as readonly string[]).includes(name);
