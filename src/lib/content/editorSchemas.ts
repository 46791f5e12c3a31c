import { z } from 'zod';
import {
	crownSchema,
	everydaySchema,
	feedingWordsSchema,
	guildSchema,
	jawSchema,
	materialSchema,
	preySchema,
	ridgeSchema,
	thresholdsSchema,
} from './feedingSchemas';
import { exampleFor, hasExample } from './messages';
import { askTextSchema, QUIZ_SCHEMAS, quizSettingsSchema, roundTextSchema } from './quiz/schemas';
import { entryTextSchema, REPLACEMENT_SCHEMAS } from './replacement/schemas';
import { screenEntrySchema } from './screens/schemas';
import {
	bedSchema,
	exhibitSchema,
	glossaryEntrySchema,
	groupSchema,
	ID_PATTERN,
	roomSchema,
	sourceSchema,
	specimenSchema,
} from './schemas';

type JsonSchema = { [key: string]: unknown };

/** A table: entries by id. */
const table = (entry: z.ZodType) => z.record(z.string().regex(ID_PATTERN), entry);
const tables = (schemas: Readonly<Record<string, z.ZodType>>, folder: string) =>
	Object.fromEntries(
		Object.entries(schemas).map(([name, entry]) => [`${folder}-${name}`, table(entry)] as const),
	);

/** Words of tables, by table and entry; a translation may lack any. */
const words = (tables: Readonly<Record<string, z.ZodType>>) =>
	z.strictObject(
		Object.fromEntries(Object.entries(tables).map(([name, entry]) => [name, table(entry).optional()])),
	);
/** Keys of ui/: room, place and kind, such as `table_next_here`. */
const UI_KEY = /^[A-Za-z0-9_-]+$/;

/** Every kind of YAML file whose keys are known, by the name of its schema. */
const SCHEMAS: Readonly<Record<string, z.ZodType>> = {
	exhibit: exhibitSchema,
	sources: table(sourceSchema),
	screens: table(screenEntrySchema),
	specimen: specimenSchema,
	group: groupSchema,
	bed: bedSchema,
	glossary: table(glossaryEntrySchema),
	'feeding-thresholds': thresholdsSchema,
	'feeding-crown': crownSchema,
	'feeding-materials': table(materialSchema),
	'feeding-guilds': table(guildSchema),
	'feeding-ridges': table(ridgeSchema),
	'feeding-everyday': table(everydaySchema),
	'feeding-prey': preySchema,
	'feeding-jaw': jawSchema,
	'feeding-words': feedingWordsSchema,
	'quiz-settings': quizSettingsSchema,
	'quiz-words': words({ claims: askTextSchema, questions: askTextSchema, rounds: roundTextSchema }),
	'replacement-words': words(
		Object.fromEntries(Object.keys(REPLACEMENT_SCHEMAS).map((name) => [name, entryTextSchema])),
	),
	ui: z.record(z.string().regex(UI_KEY), z.string()),
	...tables(QUIZ_SCHEMAS, 'quiz'),
	...tables(REPLACEMENT_SCHEMAS, 'replacement'),
};

/** Three numbers in brackets: what the schemas check by code (`isPoint`). */
const POINT: JsonSchema = { type: 'array', items: { type: 'number' }, minItems: 3, maxItems: 3 };

/**
 * JSON Schemas (draft-07) for text editors that complete and check while typing, by file name. They are written out
 * from the schemas of the content check, each key with its example; what one file says of another only the check
 * itself can tell.
 */
export function editorSchemas(): Record<string, JsonSchema> {
	return Object.fromEntries(
		Object.entries(SCHEMAS).map(([name, schema]) => {
			const made = z.toJSONSchema(schema, {
				target: 'draft-07',
				io: 'input',
				unrepresentable: 'any',
				override: ({ zodSchema, jsonSchema }) => {
					if (zodSchema._zod.def.type === 'custom') Object.assign(jsonSchema, POINT);
					// whole numbers as zod bounds them say nothing to a reader
					const bounded = jsonSchema as { minimum?: number; maximum?: number };
					if (bounded.minimum === Number.MIN_SAFE_INTEGER) delete bounded.minimum;
					if (bounded.maximum === Number.MAX_SAFE_INTEGER) delete bounded.maximum;
				},
			}) as JsonSchema;
			if (name === 'exhibit') withRoomEntries(made);
			return [`${name}.json`, withExamples(made)];
		}),
	);
}

/** A room may be a name, or a name with its days. */
function withRoomEntries(schema: JsonSchema): void {
	const { rooms } = schema.properties as { rooms: { items: JsonSchema } };
	const { $schema: _, ...entry } = z.toJSONSchema(roomSchema, {
		target: 'draft-07',
		io: 'input',
	}) as JsonSchema;
	rooms.items = { anyOf: [rooms.items, entry] };
}

/** Puts the example of each key where editors show it; some keys mean another thing under another one. */
function withExamples(schema: JsonSchema): JsonSchema {
	const visit = (node: unknown, under: string): void => {
		if (Array.isArray(node)) return node.forEach((one) => visit(one, under));
		if (typeof node !== 'object' || node === null) return;
		for (const [name, value] of Object.entries(node)) {
			if (name !== 'properties') visit(value, under);
			else {
				for (const [key, property] of Object.entries(value as Record<string, JsonSchema>)) {
					const known = [`${under}.${key}`, key].find(hasExample);
					if (known) property.description ??= `For example: ${exampleFor(known)}`;
					visit(property, key);
				}
			}
		}
	};
	visit(schema, '');
	return schema;
}
