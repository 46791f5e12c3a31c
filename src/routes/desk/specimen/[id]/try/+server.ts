import { createContentCache } from '$lib/content/loadContent';
import { fsReader } from '$lib/server/fsReader';
import { contentDir, getStore } from '$lib/server/getStore';
import { parseTry } from '$lib/server/specimenDesk/parseTry';
import { tryEdits } from '$lib/server/specimenDesk/tryEdits';
import { staffOnly } from '$lib/server/staffOnly';
import { error } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** Files are read again only where they change. */
const cache = createContentCache();

/** What a specimen's files would be with what is typed (TryRequest → TryAnswer); nothing is written. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const asked = parseTry(await event.request.json().catch(() => null), event.params.id);
	const exhibit = getStore().everything();
	if (!asked || !exhibit) error(400, 'Not understood');
	const lang = event.url.searchParams.get('lang') ?? '';
	const answer = await tryEdits(event.params.id, asked, exhibit, fsReader(contentDir()), cache, lang);
	return Response.json(answer, { headers: { 'cache-control': 'no-store' } });
};
