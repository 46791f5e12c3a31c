import type { Trait } from './traits';

/** A message of content/ui and what fills it. */
export interface Message {
	key: string;
	values: Readonly<Record<string, string | number>>;
}

/** Between these ratios a difference is told as "about so many times". */
const WORTH_TIMES = [1.75, 10.5] as const;
/** A share under this is none to speak of. */
const NONE = 0.01;

/**
 * The sentence on a trait in which two teeth differ: `differ_<trait>`, filled with the two values `a` and `b` (of ridges
 * their number) and with `one` and `two`, the places 1 and 2 of the teeth; of numbers also `more` and `less`, the places (1 or 2) of the tooth that has more and less of it, and
 * `times`, how many times as much, 0 under 1.75 and over 10; of yes-no also `has` and `lacks`.
 */
export function sayDifference(a: Trait, b: Trait): Message {
	const values: Record<string, string | number> = { a: filler(a), b: filler(b), one: 1, two: 2 };
	if (a.kind === 'number') {
		const [x, y] = [Number(a.value), Number(b.value)];
		values.more = x > y ? 1 : 2;
		values.less = x > y ? 2 : 1;
		const ratio = Math.max(x, y) / Math.min(x, y);
		values.times = ratio >= WORTH_TIMES[0] && ratio < WORTH_TIMES[1] ? Math.round(ratio) : 0;
	}
	if (a.kind === 'yes-no') {
		values.has = a.value === true ? 1 : 2;
		values.lacks = a.value === true ? 2 : 1;
	}
	return { key: `differ_${snake(a.id)}`, values };
}

/**
 * The sentence on a trait in which two teeth are alike: `differ_alike_<trait>`, filled with both values and `none`, yes
 * where neither tooth has anything of it.
 */
export function sayAlike(a: Trait, b: Trait): Message {
	const none = isAbsence(a) && isAbsence(b) ? 'yes' : 'no';
	return { key: `differ_alike_${snake(a.id)}`, values: { a: filler(a), b: filler(b), none } };
}

/** Whether a tooth has nothing of what a trait is about: no edges, no ridges, no wear. */
export function isAbsence({ id, value }: Trait): boolean {
	return value === 0 || value === false || value === 'none' || (id === 'wear' && Number(value) < NONE);
}

/** A trait's name: `differ_name_<trait>`. */
export const sayName = (trait: Trait): Message => ({ key: `differ_name_${snake(trait.id)}`, values: {} });

/** A value by itself, with its unit: `differ_value_<trait>`. */
export const sayValue = (trait: Trait): Message => ({
	key: `differ_value_${snake(trait.id)}`,
	values: { value: filler(trait) },
});

function filler({ value, count }: Trait): string | number {
	if (count !== undefined) return count;
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	return value ?? '';
}

/** ridgeSide -> ridge_side, as keys of content/ui are written */
const snake = (id: string): string => id.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
