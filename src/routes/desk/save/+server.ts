import { parseSave } from '$lib/server/deskRequests';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { getStore } from '$lib/server/getStore';
import { saveAnswer } from '$lib/server/saveAnswer';
import { staffOnly } from '$lib/server/staffOnly';
import { error } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** Saves texts, all or none: `{ changes, what, evenIfBroken? }` is answered with a SaveAnswer. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const asked = parseSave(await event.request.json().catch(() => null));
	if (!asked) error(400, 'Not understood');
	const saved = await getDeskFiles().save({ ...asked, by: 'desk' });
	if (saved.ok) void getStore().reload();
	return Response.json(saveAnswer(saved, event.url.searchParams.get('lang') ?? ''), {
		headers: { 'cache-control': 'no-store' },
	});
};
