const STRONG = 'aeoáéó';
/** a weak vowel with an accent always stands alone */
const STRESSED_WEAK = 'íú';
const isVowel = (letter: string | undefined): boolean =>
	letter !== undefined && 'aeiouáéíóúü'.includes(letter);

/**
 * Syllables of one Spanish word (letters, any case): each group of vowels is one, parted between two strong ones
 * (a, e, o) and at an accented í or ú. A silent h parts nothing. Source of the rules: the spelling of the
 * Spanish language (RAE, Ortografía 2010, diphthongs and hiatus) [memory].
 */
export function syllablesSpanish(word: string): number {
	const letters = word
		.toLowerCase()
		.normalize('NFC')
		.replace(/[^a-zñáéíóúü]/g, '')
		.replace(/qu(?=[eiéí])/g, 'q')
		.replace(/gu(?=[eiéí])/g, 'g')
		.replace(/(?<!c)h/g, '')
		// y is a vowel at the end of a word only
		.replace(/y$/, 'i');
	let count = 0;
	for (let i = 0; i < letters.length; i++) {
		if (!isVowel(letters[i])) continue;
		const before = letters[i - 1];
		const parted =
			!isVowel(before) ||
			(STRONG.includes(letters[i]) && STRONG.includes(before)) ||
			STRESSED_WEAK.includes(letters[i]) ||
			STRESSED_WEAK.includes(before);
		if (parted) count++;
	}
	return letters === '' ? 0 : Math.max(1, count);
}
