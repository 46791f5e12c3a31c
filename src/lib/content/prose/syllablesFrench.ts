/** Words in -ent whose end is spoken; of the others, verbs in the plural, it is silent. Adverbs end in -ment. */
const SPOKEN_ENT =
	/ment$|^(dent|vent|cent|lent|gent|argent|agent|serpent|accident|occident|client|patient|talent|parent|orient|souvent|content|absent|présent|récent|ardent|prudent|évident|différent|fréquent|apparent|cohérent|excellent|violent|urgent|trident|incident|continent)$/;
const VOWELS = 'aeiouyàâäéèêëîïôöùûüœæ';
/** two vowels that are spoken apart: géant, théâtre, naïf, poète, cacao, réel, cruel, noël */
const APART = /[éè](?=[aàâeèiïoôuy])(?!es?$)|[aou]ï|o[éèë]|ao(?!û)|oa|ué|ua(?!i)(?<![qg]ua)/g;

/**
 * Syllables of one French word (letters, any case) as it is spoken: a final e, -es, or the -ent of a verb
 * in the plural is not counted. Rules: common practice, no source; what is not counted follows the worked
 * example of the reading formula (le, re-quin, perd, des, mil-liers, de, dents = 9).
 */
export function syllablesFrench(word: string): number {
	let letters = word
		.toLowerCase()
		.normalize('NFC')
		.replace(new RegExp(`[^a-zç${VOWELS}]`, 'g'), '');
	if (letters === '') return 0;
	letters = letters.replace(/qu/g, 'q').replace(/gu(?=[eiéèêy])/g, 'g');
	// a y between vowels closes one syllable and opens the next: crayon
	letters = letters.replace(/(?<=[aeou])y(?=[aeiouéè])/g, 'ij');
	const apart = letters.match(APART)?.length ?? 0;
	let groups = letters.match(new RegExp(`[${VOWELS}]+`, 'g'))?.length ?? 0;
	if (/[^aeiouyàâéèêëîïôùûüœæ]es?$/.test(letters)) groups--;
	else if (/[^aeiouyàâéèêëîïôùûüœæ]ent$/.test(letters) && !SPOKEN_ENT.test(letters)) groups--;
	return groups + apart < 1 ? (new RegExp(`[${VOWELS}]`).test(letters) ? 1 : 0) : groups + apart;
}
