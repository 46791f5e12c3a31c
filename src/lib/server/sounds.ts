import { createHash } from 'node:crypto';
import { soundPath } from '../content/fileKind';
import { ID_PATTERN } from '../content/schemas';

/** Address of a label read aloud; `stamp` is what changes with the recording. */
export const soundUrl = (id: string, language: string, stamp: string): string =>
	`/sounds/${id}/${language}.mp3?v=${createHash('sha256').update(stamp).digest('hex').slice(0, 12)}`;

/** Path of that recording within the content folder; null for what can be no name of one. */
export function soundFile(id: string, language: string): string | null {
	return ID_PATTERN.test(id) && /^[a-z]{2,3}$/.test(language) ? soundPath(id, language) : null;
}
