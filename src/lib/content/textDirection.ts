export const DIRECTIONS = ['ltr', 'rtl'] as const;
/** Which way lines of a language run. */
export type Direction = (typeof DIRECTIONS)[number];

/** Scripts that run from right to left, ISO 15924, by their Bidi_Class R and AL in Unicode; from memory, for browsers that do not tell. */
const FROM_THE_RIGHT = new Set(
	'Adlm Arab Aran Armi Avst Chrs Cprt Elym Hatr Hebr Hung Khar Lydi Mand Mani Mend Merc Mero Narb Nbat Nkoo Orkh Ougr Palm Phli Phlp Phnx Prti Rohg Samr Sarb Sogd Sogo Syrc Thaa Yezi'.split(
		' ',
	),
);

interface TellingLocale extends Intl.Locale {
	textInfo?: { direction?: string };
	getTextInfo?(): { direction?: string };
}

/** The direction of a language by its code; what the curator declared goes first. Unknown languages run from left to right. */
export function textDirection(code: string, declared?: Direction): Direction {
	if (declared) return declared;
	try {
		const locale: TellingLocale = new Intl.Locale(code);
		const told = (locale.getTextInfo?.() ?? locale.textInfo)?.direction;
		// a language without data of its own is said to run from the left, whatever its script
		return told === 'rtl' ? 'rtl' : scriptDirection(locale.maximize().script);
	} catch {
		return 'ltr';
	}
}

/** The direction of a script by its ISO 15924 code. */
export const scriptDirection = (script: string | undefined): Direction =>
	script !== undefined && FROM_THE_RIGHT.has(script) ? 'rtl' : 'ltr';
