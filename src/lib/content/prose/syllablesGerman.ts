/** Two letters that sound as one, longest sounds first; every other vowel is one by itself. */
const NUCLEUS = /aa|ai|au|ay|äu|ee|ei|eu|ey|ie|oo|[aeiouyäöü]/g;

/**
 * Syllables of one German word (letters, any case): each vowel or diphthong is one. The endings -ien, -rier, -eum and
 * -ium are two, as in Reptilien, Saurier, Museum and Aquarium, but not in schien. The u of qu is no vowel. Source of the rules:
 * German spelling (Duden, parting of words) [memory].
 */
export function syllablesGerman(word: string): number {
	const letters = word
		.toLowerCase()
		.normalize('NFC')
		.replace(/[^a-zäöüß]/g, '')
		.replace(/qu/g, 'q')
		// a mark that parts the two vowels
		.replace(/(?<=[aeiouäöü][^aeiouäöü]+)i(?=en[sn]?$)(?<!schi)/, 'i-')
		.replace(/(?<=r)i(?=er[ns]?$)/, 'i-')
		.replace(/([ei])(?=um(s|en)?$)/, '$1-');
	if (/^-*$/.test(letters)) return 0;
	return Math.max(1, letters.match(NUCLEUS)?.length ?? 0);
}
