/** Endings whose e is written and not spoken: -ed but after d and t, -es but after a hiss. */
const SILENT_ED = /[^dtaeiouy]ed$/;
const SILENT_ES = /[^aeiouyszx]es$/;
const HISSING_ES = /(c|g|s|z|x|ch|sh)es$/;
/** -le, -les after a consonant, and -sm, are a beat of their own */
const OWN_LE = /[^aeiouyl]les?$/;
/** two vowels that are spoken apart; not -tion, -cian, -sion, -gion */
const APART =
	/[^ctsgx]i[aou](?!u)|gia|scien|eo(?!u)|eum|ideas?$|ua(?!r)|[^g]ui[tn](?=[iy])|uou|[aeiou]ing|[aeiou]ism/g;

/**
 * Syllables of one English word (letters only, any case), by its spelling. Spelling does not tell English
 * exactly: about one word in twenty is off by one, which evens out over a text. Rules: common practice, no source.
 */
export function syllablesEnglish(word: string): number {
	const letters = word.toLowerCase().replace(/[^a-z]/g, '');
	if (letters === '') return 0;
	let count = letters.match(/[aeiouy]+/g)?.length ?? 0;
	if (SILENT_ED.test(letters)) count--;
	else if (SILENT_ES.test(letters) && !HISSING_ES.test(letters) && !OWN_LE.test(letters)) count--;
	else if (/[^aeiouy]e$/.test(letters) && !OWN_LE.test(letters)) count--;
	count += letters.match(APART)?.length ?? 0;
	if (/[^aeiouy]sms?$|[^aeiouy]thms?$/.test(letters) || /[aeiouy]sms?$/.test(letters)) count++;
	return Math.max(1, count);
}
