import { closest, distance } from 'fastest-levenshtein';

/** The word of `known` that was probably meant, or undefined when none is near. */
export function suggest(found: string, known: readonly string[]): string | undefined {
	if (known.length === 0 || found.length > 200) return undefined;
	const wanted = found.toLowerCase();
	const nearest = closest(wanted, known as string[]);
	const allowed = Math.min(4, Math.ceil(Math.min(wanted.length, nearest.length) / 3));
	if (distance(wanted, nearest) <= allowed) return nearest;
	return known.find(
		(word) => wanted.length > 3 && (word.startsWith(wanted) || wanted.startsWith(`${word}_`)),
	);
}
