import { z } from 'zod';
import { TRAIT_LIMITS } from '../domain/feeding/crownTraits';
import { PLACE_TRAITS } from '../domain/feeding/evidence';
import { CORNERS } from '../domain/feeding/position';
import { PREY_OUTLINES, RIDGE_VERDICTS } from './feedingContent';
import { fields, ID_PATTERN } from './schemas';

const text = z.string().trim().min(1);
const id = z.string().regex(ID_PATTERN);
const share = z.number().min(0).max(1);
const pull = z.number().min(0).max(10);

/** A number with who says so; `low` and `high` where the source gives a range. */
const sourced = (min: number, max: number) =>
	fields({
		value: z.number().min(min).max(max),
		low: z.number().min(min).max(max).optional(),
		high: z.number().min(min).max(max).optional(),
		source: id,
		tag: z.literal('memory').optional(),
	});

const pressure = sourced(0.001, 100_000);
const stiffness = sourced(0.0001, 1500);
const poisson = sourced(0, 0.5);

const spreads = fields({
	slenderness: z.number().min(0.001).max(3),
	tip: z.number().min(0.001).max(3),
	roundness: z.number().min(0.001).max(3),
	edges: z.number().min(0.001).max(3),
	section: z.number().min(0.001).max(3),
	curve: z.number().min(0.1).max(90),
	wear: z.number().min(0.001).max(3),
});

export const thresholdsSchema = fields({
	slenderness: fields({ middle: z.number().min(0.2).max(10), pull }),
	tip: fields({ middle: z.number().min(0.01).max(1), pull }),
	roundness: fields({ middle: z.number().min(0.1).max(1), pull }),
	edges: fields({
		middle: share,
		pull,
		full_share: z.number().min(0.02).max(0.4),
		serrated: share,
	}),
	section: fields({ pull }),
	curve: fields({ middle_deg: z.number().min(0).max(80), step_deg: z.number().min(1).max(90), pull }),
	wear: fields({ pull }),
	spread: spreads,
	unknown: spreads,
	edged_share: share,
	side_pull_deg: z.number().min(0).max(90),
	prey_over_tooth: fields({ from: z.number().min(0.1).max(10_000), to: z.number().min(0.1).max(10_000) }),
	sources: z.array(id).min(1),
});

export const crownSchema = fields({
	strength_mpa: pressure,
	enamel_stiffness_gpa: stiffness,
	enamel_poisson: poisson,
	enamel_toughness: sourced(0.01, 100),
});

export const materialSchema = fields({
	resists_mpa: pressure,
	basis: z.enum(['strength', 'hardness']),
	gives: z.enum(['parts', 'cracks']),
	stiffness_gpa: stiffness.optional(),
	poisson: poisson.optional(),
	edges: z.enum(['help', 'no-difference', 'not-tested']),
	edges_source: id,
	borrowed: z.boolean().optional(),
});

const band = fields({ from: z.number().min(0).max(1000), to: z.number().min(0).max(1000) }).optional();
export const guildSchema = fields({
	corner: z.enum(CORNERS).optional(),
	bands: z.strictObject(
		Object.fromEntries(PLACE_TRAITS.map((trait) => [trait, band])) as Record<
			(typeof PLACE_TRAITS)[number],
			typeof band
		>,
	),
	sources: z.array(id).min(1),
});

export const preySchema = fields({
	outline: z.enum(PREY_OUTLINES),
	layers: z.array(fields({ material: text, thickness_mm: sourced(0.01, 500) })).min(1),
	shell: fields({ radius_mm: sourced(1, 2000), strength_mpa: pressure }).optional(),
	length_mm: sourced(1, 30_000).optional(),
	sources: z.array(id),
});

const limited = (key: keyof typeof TRAIT_LIMITS) =>
	z.number().min(TRAIT_LIMITS[key][0]).max(TRAIT_LIMITS[key][1]);
export const jawSchema = fields({
	teeth: z.number().int().min(2).max(60),
	stops: z
		.array(
			fields({
				id,
				at: share,
				crown_height_mm: z.number().min(0.5).max(300),
				slenderness: limited('slenderness'),
				tip: limited('tip'),
				roundness: limited('roundness'),
				edges: limited('edges'),
				lens: limited('lens').optional(),
				fullness: limited('fullness'),
				curve_deg: limited('curve_deg'),
			}),
		)
		.min(1),
	sources: z.array(id).min(1),
});

export const ridgeSchema = fields({
	verdict: z.enum(RIDGE_VERDICTS),
	sources_for: z.array(id),
	sources_against: z.array(id),
});

export const everydaySchema = fields({ mass_kg: sourced(0.001, 1_000_000) });

const cornerWords = fields({ name: text, shape: text, does: text });
export const feedingWordsSchema = fields({
	corners: fields({ pierce: cornerWords, cut: cornerWords, crush: cornerWords }),
	guilds: z.record(z.string(), fields({ name: text, form: text, wear: text, food: text, examples: text })),
	materials: z.record(z.string(), text),
	prey: z.record(z.string(), fields({ name: text, short: text, lesson: text })),
	jaws: z.record(
		z.string(),
		fields({
			name: text,
			short: text,
			stops: z.record(z.string(), fields({ name: text, does: text })),
		}),
	),
	ridges: z.record(z.string(), fields({ name: text, for: text, against: text })),
	everyday: z.record(z.string(), text),
});
