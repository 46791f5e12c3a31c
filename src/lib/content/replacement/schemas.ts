import { z } from 'zod';
import { ARRANGEMENTS } from '../../domain/replacement/lifeForm';
import { VERDICTS } from '../../domain/replacement/judgeBase';
import { LIFE_STAGES } from '../../domain/replacement/lifeStage';
import { PRESERVATIONS, SOURCE_TAGS } from '../exhibit';
import { fields, id, modelSchema, text } from '../schemas';
import { AGE_KINDS, ANIMAL_KINDS, type ReplacementTable } from './types';

/** A number with its source; `to` may be left out, `tag` says that the number is less sure than its source. */
const quantity = (least: number, most: number) =>
	fields({
		from: z.number().min(least).max(most),
		to: z.number().min(least).max(most).optional(),
		source: id,
		tag: z.enum(SOURCE_TAGS).optional(),
	});

const days = quantity(1, 20_000);
const lines = quantity(5, 5000);
const line = quantity(0.5, 200);
const positions = quantity(4, 1000);
const sources = z.array(id).optional();

const animal = fields({
	kind: z.enum(ANIMAL_KINDS),
	living: z.boolean(),
	latin: text.optional(),
	period_d: days.optional(),
	age: fields({ kind: z.enum(AGE_KINDS), days }).optional(),
	line_um: line.optional(),
	positions: positions.optional(),
	successors: quantity(0, 20).optional(),
	sources,
});

const spacing = z.number().min(0.5).max(20);

export const REPLACEMENT_SCHEMAS = {
	animals: animal,
	stages: fields({ sources }),
	arrangements: fields({ sources }),
	jaws: fields({
		positions: z.number().int().min(4).max(60),
		spacing: spacing.optional(),
		spacings: z.array(spacing).min(1).optional(),
		spacing_source: quantity(0.5, 20).optional(),
		period_d: z.number().min(1).max(5000),
		sources,
	}),
	slices: fields({
		in_use: lines,
		successor: lines.optional(),
		line_um: line,
		seed: z.number().int().min(0).max(1_000_000),
		edge_loss: quantity(0, 0.5),
		sources,
	}),
	counts: fields({
		positions,
		period_d: days,
		last_period_d: days.optional(),
		years: quantity(0.1, 150),
		tooth_mm3: quantity(0.1, 1_000_000),
		sources,
	}),
	mysteries: fields({
		model: modelSchema,
		preservation: z.enum(PRESERVATIONS),
		root: z.enum(['none', 'stub', 'full', 'unclear']),
		base: z.enum(['bays', 'clean-break', 'whole', 'thin-rim', 'unclear']),
		tip: z.enum(['worn', 'unworn', 'unclear']),
		answer: z.enum(VERDICTS),
		sources,
	}),
	wear: fields({
		tooth: modelSchema,
		opposing: modelSchema.optional(),
		closing_deg: z.number().min(5).max(60),
		spacing_mm: z.number().min(1).max(200),
		stump_share: z.number().min(0.1).max(0.9),
		sources,
	}),
} as const satisfies Record<ReplacementTable, z.ZodType>;

export type InFile<T extends ReplacementTable> = z.output<(typeof REPLACEMENT_SCHEMAS)[T]>;

/** Tables whose entries are not free to name. */
export const FIXED_IDS: Partial<Record<ReplacementTable, readonly string[]>> = {
	stages: LIFE_STAGES,
	arrangements: ARRANGEMENTS,
};

/** Words of one entry. */
export const entryTextSchema = fields({ name: text, line: text, more: text.optional() });
