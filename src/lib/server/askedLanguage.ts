import { languageFolder } from '../kiosk/languageFolder';

/** The language that an address asks for: by `?lang=`, or by its folder where the exhibit is plain files; else null. */
export const askedLanguage = (url: URL): string | null =>
	url.searchParams.get('lang') ?? languageFolder(url.pathname);
