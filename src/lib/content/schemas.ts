import { z } from 'zod';
import { SECTION_SHAPES, SIDES, TAPERS } from '../domain/tooth/form';
import { JAW_PLACES } from '../domain/quiz/question';
import { camelKeys } from './camelKey';
import { DIRECTIONS } from './textDirection';
import {
	CERTAINTIES,
	FEATURE_KINDS,
	PARTS,
	PRESERVATIONS,
	ROOMS,
	SCAN_COLOURS,
	SOURCE_TAGS,
	STATUSES,
} from './exhibit';

/** Ids of files, features, sources, beds, groups and glossary entries. */
export const ID_PATTERN = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** Every key known, none more; the result has the keys of code. */
export const fields = <T extends z.ZodRawShape>(shape: T) =>
	z.strictObject(shape).transform((value) => camelKeys(value));

export const text = z.string().trim().min(1);
export const id = z.string().regex(ID_PATTERN);
const number = z.number();
const count = z.number().int();
const angle = z.number().min(0).max(360);

export const screenSchema = fields({
	diagonal_in: z.number().min(3).max(300),
	width_px: count.min(320).max(16384),
	height_px: count.min(320).max(16384),
	// of the picture above the floor
	bottom_edge_mm: z.number().min(0).max(3000).optional(),
});

/** Days on which something is shown, both included. */
const showSchema = fields({ from: text.optional(), until: text.optional() });

/** A room of exhibit.yaml that is shown on some days only; the others are a plain name. */
export const roomSchema = fields({ room: z.enum(ROOMS), show: showSchema.optional() });

export const exhibitSchema = fields({
	museum: text,
	languages: z
		.array(
			fields({
				code: z.string().regex(/^[a-z]{2,3}$/),
				name: text,
				direction: z.enum(DIRECTIONS).optional(),
			}),
		)
		.min(1),
	rooms: z.array(z.enum(ROOMS)).min(1),
	specimens_first: z.array(text).optional(),
	time_zone: text.optional(),
	screen: screenSchema,
	idle: fields({
		warn_after_s: z.number().min(1).max(3600),
		reset_after_warning_s: z.number().min(1).max(600),
	}),
	contact: text.optional(),
	public_address: text.optional(),
	counts: fields({
		// anonymous counts are deleted after so many days
		keep_days: count.min(1).max(3660).optional(),
		// false: nothing is counted but the answers of the quiz
		use: z.boolean().optional(),
	}).optional(),
});

export const sourceSchema = fields({
	citation: text,
	doi: z
		.string()
		.regex(/^10\.\d{4,9}\/\S+$/)
		.optional(),
	tag: z.enum(SOURCE_TAGS),
});

export const sourcesSchema = z.record(z.string(), z.unknown());

/** Metres; no animal that ever lived is known to be longer. */
const animalLength = z.number().min(0.05).max(60);

export const groupSchema = fields({
	latin: text.optional(),
	living: z.boolean(),
	habitat: z.enum(['sea', 'river', 'land']),
	length_m: fields({
		typical: animalLength.optional(),
		largest: animalLength.optional(),
		source: id,
	}).optional(),
	sources: z.array(id),
});

export const bedSchema = fields({
	oldest_ma: z.number().min(0).max(4600),
	youngest_ma: z.number().min(0).max(4600),
});

export const nameTextSchema = fields({ name: text, short: text });

export const groupTextSchema = fields({
	name: text,
	short: text,
	moves: text.optional(),
	lives: text.optional(),
	eats: text.optional(),
	eaten_by: text.optional(),
});

export const labelSchema = fields({
	title: text,
	short: text,
	alt: text.optional(),
	features: z.record(z.string(), text).optional(),
});

export const glossaryEntrySchema = fields({ term: text, meaning: text });
export const glossarySchema = z.record(z.string(), z.unknown());
export const uiSchema = z.record(z.string(), z.unknown());

const side = z.enum(SIDES);
const sideOrAngle = z.union([side, number]);

/** Ranges are the sculptor's own (domain/tooth/formRanges.ts), so here a number is any number. */
export const modelSchema = fields({
	based_on: z.array(id).optional(),
	crown_height_mm: number,
	base_length_mm: number,
	base_width_mm: number,
	sections: z.array(fields({ at: number, shape: z.enum(SECTION_SHAPES), width_factor: number.optional() })),
	taper: z.enum(TAPERS),
	curve: fields({ distal_deg: number, lingual_deg: number, starts_at: number }),
	tip_radius_mm: number,
	carinae: z
		.array(
			fields({
				where: sideOrAngle,
				prominence_mm: number,
				from: number,
				serrations_per_5mm: number.optional(),
				serration_depth_mm: number.optional(),
			}),
		)
		.optional(),
	ridges: fields({
		count,
		height_mm: number,
		sides: z.enum(['all', 'labial', 'lingual']),
		from: number,
		to: number,
		alternating: z.boolean(),
	}).optional(),
	neck: fields({ constriction: number, length_mm: number }).optional(),
	root: z.discriminatedUnion('state', [
		fields({ state: z.literal('none') }),
		fields({ state: z.literal('full'), length_mm: number, swelling: number, folded: z.boolean() }),
		fields({ state: z.literal('open'), length_mm: number }),
		fields({ state: z.literal('resorbed'), length_mm: number, pit_side: side, pit_depth_mm: number }),
	]),
	pulp: fields({ height_mm: number, opening: number }).optional(),
	wear: fields({
		tip_worn_to_mm: number.optional(),
		facets: z.array(fields({ side, angle_deg: number, depth_mm: number, at: number })).optional(),
	}).optional(),
});

/** Three finite numbers: a place or a direction. One problem for the whole, however many numbers are wrong. */
const point = z.custom<[number, number, number]>(isPoint);
export function isPoint(value: unknown): value is [number, number, number] {
	return Array.isArray(value) && value.length === 3 && value.every((n) => Number.isFinite(n));
}

const crown = fields({
	apex_mm: point,
	base_mesial_mm: point,
	base_distal_mm: point,
	labial: point.optional(),
});

export const scanSchema = fields({
	file: text,
	units: z.enum(['um', 'mm', 'cm', 'm', 'in']),
	crown: crown.optional(),
	colour: z.enum(SCAN_COLOURS).optional(),
});

/** A size that a card may give; whether it is likely is the measuring's to say. */
const size = z.number().min(0.01).max(10_000);

export const specimenSchema = fields({
	status: z.enum(STATUSES).optional(),
	show: showSchema.optional(),
	accession: text,
	group: text,
	part: z.enum(PARTS),
	preservation: z.enum(PRESERVATIONS),
	bed: text.optional(),
	jaw_place: z.enum(JAW_PLACES).optional(),
	identified: fields({ by: text, certainty: z.enum(CERTAINTIES) }),
	shape: fields({ model: modelSchema.optional(), scan: scanSchema.optional() }),
	declared: fields({
		crown_height_mm: size.optional(),
		base_length_mm: size.optional(),
		base_width_mm: size.optional(),
	}).optional(),
	locality: fields({
		place: text.optional(),
		latitude_deg: z.number().min(-90).max(90),
		longitude_deg: z.number().min(-180).max(180),
		// 1 most, 4 least sensitive
		sensitivity: count.min(1).max(4),
	}).optional(),
	features: z
		.array(
			fields({
				id,
				// below 0 = on the root
				at: z.number().min(-5).max(1),
				where: z.union([side, angle]),
				kind: z.enum(FEATURE_KINDS).optional(),
			}),
		)
		.optional(),
	licence: text,
	rights_holder: text,
	sources: z.array(text),
});

export type ScanInFile = z.output<typeof scanSchema>;
export type ModelInFile = z.output<typeof modelSchema>;
export type SpecimenInFile = z.output<typeof specimenSchema>;
export type ExhibitInFile = z.output<typeof exhibitSchema>;
export type LabelInFile = z.output<typeof labelSchema>;
