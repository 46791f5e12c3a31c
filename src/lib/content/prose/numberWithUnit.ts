const UNITS =
	'mm|cm|km|m|µm|kg|g|t|N|%|°|years?|months?|weeks?|days?|millions?|tonnes?|newtons?|metres?|kilos?|ans|années?|mois|semaines?|jours?|mètres?|años?|mes|meses|semanas?|días?|millón|millones|toneladas?|metros?';
const NUMBER = new RegExp(
	`(?<![\\p{L}\\p{N}])\\d[\\d.,\\u00A0\\u202F]*[ \\u00A0\\u202F]?(?:${UNITS})(?![\\p{L}\\p{N}])`,
	'u',
);
/** A number that says of itself that it was measured here needs no other source. */
const MEASURED = /measured|mesuré|medid[oa]/i;

/** The first number of a text that claims a quantity, with its unit, and its line, from 0; null where there is none. */
export function numberWithUnit(text: string): { found: string; line: number; column: number } | null {
	for (const [line, words] of text.split('\n').entries()) {
		const match = MEASURED.test(words) ? null : NUMBER.exec(words);
		if (match) return { found: match[0], line, column: match.index + 1 };
	}
	return null;
}
