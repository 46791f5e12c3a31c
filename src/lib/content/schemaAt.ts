import type { z } from 'zod';

/* zod's own description of a schema, as far as it is used here */
interface Described {
	def: {
		type: string;
		in?: Described;
		innerType?: Described;
		element?: Described;
		valueType?: Described;
		options?: Described[];
		discriminator?: string;
		values?: unknown[];
	};
	shape?: Record<string, Described>;
	minValue?: number | null;
	maxValue?: number | null;
}

const bare = (schema: Described): Described => {
	let at = schema;
	for (;;) {
		if (at.def.type === 'pipe') at = at.def.in!;
		else if (at.def.type === 'optional') at = at.def.innerType!;
		else return at;
	}
};

const literalOf = (option: Described, key: string) => bare(option).shape?.[key]?.def.values?.[0];

function optionFor(union: Described, value: unknown): Described | undefined {
	const key = union.def.discriminator!;
	const found = (value as Record<string, unknown> | null)?.[key];
	return union.def.options!.find((option) => literalOf(option, key) === found);
}

function at(schema: Described, path: readonly PropertyKey[], value: unknown): Described | undefined {
	const here = bare(schema);
	if (path.length === 0) return here;
	const [step, ...rest] = path;
	const next = (value as Record<PropertyKey, unknown> | null | undefined)?.[step];
	if (here.def.type === 'object') {
		const field = here.shape![String(step)];
		return field && at(field, rest, next);
	}
	if (here.def.type === 'array') return at(here.def.element!, rest, next);
	if (here.def.type === 'record') return at(here.def.valueType!, rest, next);
	if (here.def.type === 'union' && here.def.discriminator) {
		const option = optionFor(here, value);
		return option && at(option, path, value);
	}
	return undefined;
}

/** The keys allowed at a path; `value` is the whole value, which decides between alternatives. Empty where any key is. */
export function keysAt(schema: z.ZodType, path: readonly PropertyKey[], value: unknown): string[] {
	const found = at(schema as unknown as Described, path, value);
	if (!found) return [];
	if (found.def.type === 'object') return Object.keys(found.shape!);
	if (found.def.type !== 'union' || !found.def.discriminator) return [];
	let here = value;
	for (const step of path) here = (here as Record<PropertyKey, unknown>)?.[step];
	const option = optionFor(found, here);
	return option ? Object.keys(bare(option).shape!) : [found.def.discriminator];
}

/** The choices of the word that decides between alternatives (`root.state`). */
export function choicesAt(schema: z.ZodType, path: readonly PropertyKey[], value: unknown): string[] {
	const parent = at(schema as unknown as Described, path.slice(0, -1), value);
	if (parent?.def.type !== 'union') return [];
	return parent.def.options!.map((option) => String(literalOf(option, parent.def.discriminator!)));
}

/** Every key of a kind of file with the paths (`shape.model`) under which it may stand. */
export function keyHomes(schema: z.ZodType): ReadonlyMap<string, string[]> {
	const homes = new Map<string, string[]>();
	const visit = (node: Described, path: string) => {
		const here = bare(node);
		if (here.def.type === 'object') {
			for (const [key, field] of Object.entries(here.shape!)) {
				const known = homes.get(key) ?? [];
				if (!known.includes(path)) homes.set(key, [...known, path]);
				visit(field, path ? `${path}.${key}` : key);
			}
		} else if (here.def.type === 'array') visit(here.def.element!, path);
		else if (here.def.type === 'union') for (const option of here.def.options!) visit(option, path);
	};
	visit(schema as unknown as Described, '');
	return homes;
}

/** Least and greatest number allowed at a path. */
export function rangeAt(
	schema: z.ZodType,
	path: readonly PropertyKey[],
	value: unknown,
): { min?: number; max?: number } {
	const here = at(schema as unknown as Described, path, value);
	// a side or degrees: the degrees have the range
	const found =
		here?.def.type === 'union' ? here.def.options!.map(bare).find(({ def }) => def.type === 'number') : here;
	const range: { min?: number; max?: number } = {};
	if (isBound(found?.minValue)) range.min = found.minValue;
	if (isBound(found?.maxValue)) range.max = found.maxValue;
	return range;
}

const isBound = (n: number | null | undefined): n is number =>
	typeof n === 'number' && Math.abs(n) < Number.MAX_SAFE_INTEGER;
