import { fileURLToPath } from 'node:url';
import { loadContent } from '../../src/lib/content/loadContent';
import type { Feeding } from '../../src/lib/content/feedingContent';
import { fsReader } from '../../src/lib/server/fsReader';

/** The exhibit's own folder `feeding/`, as it is shown. */
export async function demoFeeding(): Promise<Feeding> {
	const { draft } = await loadContent(fsReader(fileURLToPath(new URL('../../content', import.meta.url))));
	if (!draft?.feeding) throw new Error('demoFeeding: the folder feeding/ cannot be used');
	return draft.feeding;
}
