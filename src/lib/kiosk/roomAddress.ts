/**
 * Address of a page from the exhibit's own root, in one language. A server is told the language (`?lang=fr`); where the
 * exhibit is plain files, `filesFirst` is its first language, every other has a folder of its own, and a page is the
 * folder that holds its file: `/fr/compare/?teeth=a`.
 */
export function roomAddress(path: string, lang: string, filesFirst: string | null): string {
	if (filesFirst === null) return `${path}${path.includes('?') ? '&' : '?'}lang=${lang}`;
	const [room, query] = path.split('?', 2);
	const folder = `${lang === filesFirst ? '' : `/${lang}`}${room}`.replace(/\/*$/, '/');
	return query ? `${folder}?${query}` : folder;
}

/** The way back: the page's path without folder of a language and without the slash at its end. */
export function roomPath(path: string, languages: readonly string[]): string {
	const [, first = ''] = path.split('/', 2);
	const room = languages.includes(first) ? path.slice(first.length + 1) : path;
	return room.replace(/\/+$/, '') || '/';
}
