import type { ContentReader } from '../../content/draft';
import { loadContent, type ContentCache } from '../../content/loadContent';
import type { Problem } from '../../content/problem';
import { contentWith, type PlannedFile } from '../contentWith';

export interface CheckOfChanges {
	/** of the changed files, as they would be */
	problems: Problem[];
	/** of any file, that are not there now */
	fresh: Problem[];
}

/** Puts changes to the content check as if they were saved. */
export async function checkChanges(
	reader: ContentReader,
	planned: ReadonlyMap<string, PlannedFile>,
	cache: ContentCache,
): Promise<CheckOfChanges> {
	const before = new Set((await loadContent(reader, cache)).problems.map(asWords));
	const { problems } = await loadContent(contentWith(reader, planned), cache);
	return {
		problems: problems.filter(({ file }) => planned.has(file)),
		fresh: problems.filter((problem) => !before.has(asWords(problem))),
	};
}

/** A problem as it is recognised again, wherever it has moved to. */
export const asWords = ({ file, id, path, message }: Problem): string => [file, id, path, message].join('\n');
