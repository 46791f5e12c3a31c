/** A language code as exhibit.yaml may hold it: no room has so short a name. */
const FOLDER = /^\/([a-z]{2,3}(?:-[a-z0-9]{2,8})*)(?:\/|$)/i;

/** The folder of a language in which a page of an export lies, by its path from the exhibit's root; null for none. */
export const languageFolder = (path: string): string | null => FOLDER.exec(path)?.[1] ?? null;
