import type { Message } from './sayTrait';

/** Values of a message that name a tooth by its place. */
const NAMING = ['one', 'two', 'more', 'less', 'has', 'lacks'];

/**
 * A message about the first and the second of two teeth, for teeth that lie in other places: 1 becomes the place of
 * the first, 2 that of the second. Places are counted from 1.
 */
export function atPlaces({ key, values }: Message, places: readonly [one: number, two: number]): Message {
	const moved = Object.entries(values).map(([name, value]) =>
		NAMING.includes(name) ? [name, places[Number(value) - 1]] : [name, value],
	);
	return { key, values: Object.fromEntries(moved) };
}
