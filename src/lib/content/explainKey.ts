import type { z } from 'zod';
import { KEY_UNITS, snakeKey } from './camelKey';
import { fieldPath } from './fieldPath';
import { finding, type Finding, type Place } from './finding';
import type { MessageData, MessageId } from './messages';
import type { Measure } from './messages/codes';
import { keyHomes } from './schemaAt';
import { suggest } from './suggest';

/** What one of each other unit is in the unit that stands in the name of a line. */
const UNITS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
	mm: { um: 0.001, cm: 10, m: 1000, in: 25.4, inch: 25.4, inches: 25.4, ft: 304.8 },
	m: { mm: 0.001, cm: 0.01, ft: 0.3048 },
	deg: { rad: 180 / Math.PI, degrees: 1, degree: 1 },
	s: { ms: 0.001, min: 60, minutes: 60, sec: 1, seconds: 1 },
	in: { cm: 1 / 2.54, mm: 1 / 25.4, inch: 1, inches: 1 },
	d: { days: 1, weeks: 7, years: 365.25, y: 365.25 },
	um: { mm: 1000, micrometres: 1 },
	mm3: { cm3: 1000, ml: 1000 },
	px: { pixel: 1, pixels: 1 },
	mpa: { pa: 1e-6, kpa: 0.001, gpa: 1000, psi: 0.00689476 },
	gpa: { mpa: 0.001, kpa: 1e-6 },
	kg: { g: 0.001, t: 1000, lb: 0.45359237, oz: 0.0283495 },
	ma: { ka: 0.001, years: 1e-6, ga: 1000, mya: 1, myr: 1 },
};

const WRITTEN_OTHERWISE: Readonly<Record<string, string>> = {
	license: 'licence',
	licensing: 'licence',
	rights: 'licence',
	id_by: 'identified',
	colour: 'preservation',
	color: 'preservation',
	diet: 'habitat',
	source: 'sources',
	room: 'rooms',
	language: 'languages',
	alt_text: 'alt',
	subtitle: 'short',
	description: 'short',
	serrations: 'serrations_per_5mm',
	denticles_per_5mm: 'serrations_per_5mm',
	accession_number: 'accession',
	catalogue_number: 'accession',
};

const homesOf = new WeakMap<z.ZodType, ReadonlyMap<string, string[]>>();

export interface ExplainedKey {
	found: Finding;
	/** the key that was meant, if one can be told, with its value in that key's unit */
	meant?: string;
	value: unknown;
}

/** What is wrong with a key that is not known at this place, and what was probably meant. */
export function explainKey(
	schema: z.ZodType,
	parent: readonly PropertyKey[],
	key: string,
	known: readonly string[],
	value: unknown,
	place: Place,
): ExplainedKey {
	const path = fieldPath([...parent, key]);
	const say = <K extends MessageId>(
		id: K,
		at: Place,
		field: string,
		data: MessageData<K>,
		meant?: string,
	) => ({
		found: finding(id, at, field, data),
		meant,
		value,
	});
	const shown = ['string', 'number', 'boolean'].includes(typeof value) ? String(value) : undefined;
	const broken = /^([\w-]+)(:)?\s*(\S.*)$/.exec(key);
	if (broken && known.includes(broken[1]) && value === null) {
		const [, meant, colon, rest] = broken;
		const line = `${meant}: ${rest}`;
		const found = colon
			? finding('missing-space', place, path, { found: key, meant: line })
			: finding('missing-colon', place, path, { line: key, meant: line });
		return { found, meant, value: numberIn(rest)?.number ?? rest };
	}

	const tidy = snakeKey(key);
	if (known.includes(tidy)) return say('key-spelling', place, path, { key, meant: tidy, value: shown }, tidy);

	const unit = otherUnit(tidy, known);
	if (unit) {
		const { meant, measure, factor } = unit;
		const number = typeof value === 'number' ? Number((value * (factor ?? 1)).toPrecision(6)) : undefined;
		const id = factor === undefined ? 'unit-missing' : 'wrong-unit';
		const words = { key, meant, measure, value: number === undefined ? undefined : String(number) };
		return { found: finding(id, place, path, words), meant, value: number ?? value };
	}

	const same = WRITTEN_OTHERWISE[tidy];
	if (same && known.includes(same)) {
		return tidy === 'license'
			? say('key-spelling', place, path, { key, meant: same, value: shown }, same)
			: say('unknown-key', place, path, { key, meant: same, known: [...known] }, same);
	}

	let homes = homesOf.get(schema);
	if (!homes) homesOf.set(schema, (homes = keyHomes(schema)));
	const here = fieldPath(parent.filter((step) => typeof step !== 'number'));
	const home = homes.get(tidy);
	const near = suggest(tidy, known);
	if (home && home.length === 1 && (!near || near.length < 4)) {
		return say('key-in-wrong-place', place, path, { key, home: home[0], here });
	}
	return say('unknown-key', place, path, { key, meant: near, value: shown, known: [...known] }, near);
}

/** `crown_height_cm` and `crown_height` for `crown_height_mm`; `factor` is absent when no unit was given. */
function otherUnit(
	key: string,
	known: readonly string[],
): { meant: string; measure: Measure; factor?: number } | null {
	const per = /^(?:serrations|denticles)_per_(\d*)(mm|cm)$/.exec(key);
	if (per && known.includes('serrations_per_5mm')) {
		const length_mm = Number(per[1] || 1) * (per[2] === 'cm' ? 10 : 1);
		return {
			meant: 'serrations_per_5mm',
			measure: 'serrations',
			factor: 5 / length_mm,
		};
	}
	for (const meant of known) {
		const unit = KEY_UNITS.find((u) => meant.endsWith(`_${u}`));
		if (!unit) continue;
		const stem = meant.slice(0, -unit.length - 1);
		const measure = unit as Measure;
		const perUnit = UNITS[unit];
		if (key === stem) return { meant, measure };
		const given = key.startsWith(`${stem}_`) ? key.slice(stem.length + 1) : '';
		if (Object.hasOwn(perUnit, given)) return { meant, measure, factor: perUnit[given] };
	}
	return null;
}

/** The number that a text such as "38,1" or "38.1 mm" means, if any. */
export function numberIn(text: string): { number: number; unit: string; comma: boolean } | null {
	const match = /^\s*([-+]?\d+(?:[.,]\d+)?|[-+]?[.,]\d+)\s*([a-zµ°"]*)\.?\s*$/i.exec(text);
	if (!match) return null;
	const number = Number(match[1].replace(',', '.'));
	return Number.isFinite(number)
		? { number, unit: match[2].toLowerCase(), comma: match[1].includes(',') }
		: null;
}

/** A number with a unit in the unit that its key names, or undefined where the two do not go together. */
export function inUnitOf(key: string, number: number, unit: string): { value?: number; unit?: string } {
	const own = KEY_UNITS.find((u) => key.endsWith(`_${u}`));
	if (!own) return {};
	const said = unit === 'µm' ? 'um' : unit === '°' ? 'degrees' : unit === '"' ? 'in' : unit;
	const factor = said === own ? 1 : UNITS[own][said];
	return { value: factor === undefined ? undefined : Number((number * factor).toPrecision(6)), unit: own };
}
