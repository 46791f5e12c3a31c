/**
 * Words that leave no doubt, by language. Evidence from fossils rarely does, so a label should say
 * "suggests" or "may" instead. common practice, no source
 */
const CERTAIN: Readonly<Record<string, RegExp>> = {
	en: /(?<![\p{L}\p{N}])(prov(?:e|es|ed|en)|certainly|undoubtedly|unquestionably|definitely|obviously|without (?:a|any) doubt|without doubt|beyond (?:any |all )?doubt)(?![\p{L}\p{N}])/giu,
	fr: /(?<![\p{L}\p{N}])(prouve(?:nt)?|prouvé(?:e?s?)|certainement|assurément|évidemment|indiscutable(?:ment)?|incontestable(?:ment)?|sans aucun doute|à coup sûr)(?![\p{L}\p{N}])/giu,
	es: /(?<![\p{L}\p{N}])(demuestran?|demostrad[oa]s?|prueban|prueba que|ciertamente|indudablemente|indiscutible(?:mente)?|obviamente|definitivamente|sin (?:ninguna |lugar a )?dudas?)(?![\p{L}\p{N}])/giu,
};

/** "Nothing proves", "does not prove", "ne prouve pas", "no demuestra": the opposite of being certain. */
const DENIED: Readonly<Record<string, RegExp>> = {
	en: /\b(not|no|nothing|nobody|none|never|cannot|hardly)\b|n[’']t\b/i,
	fr: /(?<!\p{L})(ne|rien|jamais|aucune?|personne)(?!\p{L})|(?<!\p{L})n[’']/iu,
	es: /(?<!\p{L})(no|nada|nadie|nunca|tampoco|ningún|ninguna)(?!\p{L})/iu,
};
/** A denial reaches so many words. */
const REACH = 4;

/** Certain words in a sentence, with where each begins; none where the sentence denies it, or in other languages. */
export function certainWords(sentence: string, language: string): { word: string; offset: number }[] {
	if (!Object.hasOwn(CERTAIN, language)) return [];
	return [...sentence.matchAll(CERTAIN[language])].flatMap(({ 0: word, index }) => {
		const before = sentence.slice(0, index).split(/\s+/).filter(Boolean).slice(-REACH).join(' ');
		return DENIED[language].test(before) ? [] : [{ word, offset: index }];
	});
}
