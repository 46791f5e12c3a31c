import type { Exhibit } from '../content/exhibit';

/** The language asked for where the exhibit has it, else its first; English while there is no exhibit. */
export function chooseLanguage(exhibit: Exhibit | null, asked: string | null): string {
	const languages = exhibit?.languages ?? [];
	return languages.find((language) => language.code === asked)?.code ?? languages[0]?.code ?? 'en';
}
