import type { z } from 'zod';
import { ROOMS } from './exhibit';
import { inUnitOf, numberIn } from './explainKey';
import { fieldPath, valueAt } from './fieldPath';
import { FILE_START, finding, type Finding, type Place } from './finding';
import { exampleFor } from './messages';
import type { Shown } from './messages/parts';
import type { Places } from './readYaml';
import { choicesAt, keysAt, rangeAt } from './schemaAt';
import { timeMeant } from './screens/clockMinutes';
import { SIDES } from '../domain/tooth/form';
import { suggest } from './suggest';

const YES_NO: Readonly<Record<string, boolean>> = {
	yes: true,
	no: false,
	on: true,
	off: false,
	y: true,
	n: false,
	true: true,
	false: false,
	oui: true,
	non: false,
	si: true,
	sí: true,
};

type Issue = z.core.$ZodIssue;

/** The place of a field, or of the nearest one round it that the file does write down. */
export function placeOf(
	places: Places,
	path: readonly PropertyKey[],
	which: 'key' | 'value' = 'value',
): Place {
	for (let steps = path.length; steps > 0; steps--) {
		const found = places.get(fieldPath(path.slice(0, steps)));
		if (found) return steps === path.length ? found[which] : found.key;
	}
	return FILE_START;
}

/** One of zod's issues in words, at its line; unknown keys are explainKey's. `prefix` is the path of the checked part in its file. */
export function explainIssue(
	issue: Issue,
	schema: z.ZodType,
	whole: unknown,
	places: Places,
	prefix: readonly PropertyKey[] = [],
): Finding[] {
	const steps = [...prefix, ...issue.path];
	const path = fieldPath(steps);
	const value = valueAt(whole, issue.path);
	const place = placeOf(places, steps);
	const key = String([...steps].reverse().find((step) => typeof step !== 'number') ?? '');
	const found = places.get(path)?.written ?? show(value);

	if (value === undefined && steps.length > 0) {
		return [finding('missing-key', place, path, { path, key })];
	}
	if (value === null && steps.length > 0) return [finding('empty-value', place, path, { path })];

	if (/(^|\.)(hours\[\d+\]\.(from|dim_from|until)|reload_at)$/.test(path))
		return [
			finding('bad-time', place, path, { key, found: written(found), meant: timeMeant(written(found)) }),
		];

	switch (issue.code) {
		case 'invalid_type':
			return [wrongType(issue.expected, value, found, key, path, place, issue.path, schema, whole)];
		case 'invalid_value':
			return [choice(value, issue.values.map(String), key, path, place)];
		case 'invalid_union': {
			const choices = choicesAt(schema, issue.path, whole);
			if (choices.length > 0) return [choice(value, choices, key, path, place)];
			if (typeof value === 'number')
				return [finding('out-of-range', place, path, { path, found, min: 0, max: 360 })];
			return [finding('not-a-side', place, path, { path, found, meant: suggest(written(found), SIDES) })];
		}
		case 'too_small':
		case 'too_big': {
			if (issue.origin === 'string') return [finding('empty-value', place, path, { path })];
			if (issue.origin === 'array') return [finding('list-empty', place, path, { path })];
			const own =
				issue.code === 'too_small' ? { min: Number(issue.minimum) } : { max: Number(issue.maximum) };
			const range = { ...own, ...rangeAt(schema, issue.path, whole) };
			return [finding('out-of-range', place, path, { path, found, ...range })];
		}
		case 'invalid_format':
			return [badFormat(key, written(found), path, place)];
		case 'custom':
			return [finding('not-a-point', place, path, { path, found: listed(value) })];
		default:
			return [finding('not-fields', place, path, { path, example: exampleFor(key) })];
	}
}

/** A short list as it would be written. */
function listed(value: unknown): Shown {
	const inList = (one: unknown): string => written(show(one)) || (Array.isArray(one) ? '[…]' : '{…}');
	return Array.isArray(value) ? `[${value.map(inList).join(', ')}]` : show(value);
}

function wrongType(
	expected: string,
	value: unknown,
	found: Shown,
	key: string,
	path: string,
	place: Place,
	steps: readonly PropertyKey[],
	schema: z.ZodType,
	whole: unknown,
): Finding {
	switch (expected) {
		case 'number':
		case 'int':
			if (typeof value === 'number' && expected === 'int' && Number.isFinite(value)) {
				return finding('not-whole', place, path, { path, found, meant: String(Math.round(value)) });
			}
			return notNumber(value, found, key, path, place);
		case 'boolean': {
			const meant = YES_NO[written(found).trim().toLowerCase()];
			return finding('not-yes-no', place, path, { path, found, meant });
		}
		case 'string':
			return typeof value === 'object'
				? finding('not-one-text', place, path, { path })
				: finding('text-needs-quotes', place, path, { path, found });
		case 'array':
			return finding('not-a-list', place, path, { path, found });
		default: {
			const known = keysAt(schema, steps, whole);
			const example = known.length > 0 ? exampleFor(known[0]) : exampleFor(key);
			return finding('not-fields', place, path, {
				path,
				example:
					key && exampleFor(key).startsWith(key) && !/some words/.test(exampleFor(key))
						? exampleFor(key)
						: example,
			});
		}
	}
}

function notNumber(value: unknown, found: Shown, key: string, path: string, place: Place): Finding {
	const read = typeof value === 'string' ? numberIn(value) : null;
	if (!read) return finding('not-a-number', place, path, { path, found });
	if (read.unit) {
		const own = inUnitOf(key, read.number, read.unit);
		const meant = own.value === undefined ? undefined : String(own.value);
		return finding('number-with-unit', place, path, { path, found, meant, unit: own.unit });
	}
	if (read.comma) return finding('decimal-comma', place, path, { path, found, meant: String(read.number) });
	return finding('number-in-quotes', place, path, { path, found });
}

function choice(value: unknown, choices: string[], key: string, path: string, place: Place): Finding {
	const found = show(value);
	const tidy = written(found)
		.trim()
		.toLowerCase()
		.replace(/[\s_]+/g, '-')
		.replace(/^gray$/, 'grey');
	const meant = choices.includes(tidy) ? tidy : suggest(tidy, choices);
	if (choices === undefined || key !== 'rooms')
		return finding('wrong-choice', place, path, { path, found, choices, meant });
	return finding('unknown-room', place, path, { found: written(found), choices: [...ROOMS], meant });
}

function badFormat(key: string, found: string, path: string, place: Place): Finding {
	if (key === 'code') {
		const primary = found.trim().toLowerCase().split(/[-_]/)[0];
		return finding('bad-code', place, path, { found, meant: canonicalLanguage(primary) });
	}
	if (key === 'doi') {
		const meant = /10\.\d{4,9}\/\S+/.exec(found)?.[0];
		return finding('bad-doi', place, path, { found, meant });
	}
	return finding('bad-id', place, path, { found, meant: idFrom(found) });
}

/** `eng` -> `en`, `FR` -> `fr`; undefined for what is no code at all. */
export function canonicalLanguage(code: string): string | undefined {
	try {
		return Intl.getCanonicalLocales(code.replace(/_/g, '-'))[0]?.split('-')[0];
	} catch {
		return undefined;
	}
}

/** An id near what was typed: `SKM 0104` -> `skm-0104`. */
export function idFrom(text: string): string {
	const plain = text.normalize('NFD').replace(/[\u0300-\u036f]/g, '');
	return (
		plain
			.toLowerCase()
			.replace(/[^a-z0-9]+/g, '-')
			.replace(/^-+|-+$/g, '') || 'skm-0104'
	);
}

function show(value: unknown): Shown {
	if (Array.isArray(value)) return { several: 'list' };
	return typeof value === 'object' && value !== null ? { several: 'fields' } : String(value);
}

/** The text of a single value; empty for several. */
const written = (found: Shown): string => (typeof found === 'string' ? found : '');
