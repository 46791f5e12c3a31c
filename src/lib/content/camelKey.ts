/** Units that end a key and stay as they are: `crown_height_mm` -> `crownHeight_mm`. */
export const KEY_UNITS = [
	'mm',
	'm',
	'deg',
	's',
	'px',
	'in',
	'ma',
	'd',
	'um',
	'mm3',
	'mpa',
	'gpa',
	'kg',
] as const;
type Unit = (typeof KEY_UNITS)[number];

/** Units that are written otherwise in code than in a file. */
const UNIT_IN_CODE: Readonly<Record<string, string>> = { ma: 'Ma', mpa: 'MPa', gpa: 'GPa' };

type UnitInCode<U extends string> = U extends 'ma'
	? 'Ma'
	: U extends 'mpa'
		? 'MPa'
		: U extends 'gpa'
			? 'GPa'
			: U;
type Tail<S extends string> = S extends `${infer Head}_${infer Rest}`
	? `${Capitalize<Head>}${Rest extends Unit ? `_${UnitInCode<Rest>}` : Tail<Rest>}`
	: Capitalize<S>;
export type CamelKey<S extends string> = S extends `${infer Head}_${infer Rest}`
	? Rest extends Unit
		? `${Head}_${UnitInCode<Rest>}`
		: `${Head}${Tail<Rest>}`
	: S;
export type CamelKeys<T> = { [K in keyof T as CamelKey<K & string>]: T[K] };

/** A file's key as code spells it: `crown_height_mm` -> `crownHeight_mm`, `serrations_per_5mm` -> `serrationsPer5mm`. */
export function camelKey(key: string): string {
	const words = key.split('_');
	const last = words[words.length - 1];
	const unit =
		words.length > 1 && (KEY_UNITS as readonly string[]).includes(last)
			? `_${UNIT_IN_CODE[last] ?? last}`
			: '';
	const stem = unit ? words.slice(0, -1) : words;
	return (
		stem.map((word, i) => (i === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1))).join('') + unit
	);
}

/** The way back: `crownHeight_mm` -> `crown_height_mm`; also tidies what people type: `Crown-Height mm`. */
export function snakeKey(key: string): string {
	return key
		.trim()
		.replace(/([a-z])([A-Z])|([a-zA-Z])(\d+mm$)/g, '$1$3_$2$4')
		.replace(/[\s-]+/g, '_')
		.replace(/_+/g, '_')
		.toLowerCase();
}

/** Renames the keys of one level. */
export function camelKeys<T extends object>(value: T): CamelKeys<T> {
	return Object.fromEntries(Object.entries(value).map(([key, v]) => [camelKey(key), v])) as CamelKeys<T>;
}
