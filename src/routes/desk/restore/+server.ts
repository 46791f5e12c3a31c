import { parseRestore } from '$lib/server/deskRequests';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { getStore } from '$lib/server/getStore';
import { saveAnswer } from '$lib/server/saveAnswer';
import { staffOnly } from '$lib/server/staffOnly';
import { error } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** Brings an earlier version back (RestoreAsk), as a save of its own; answered with a SaveAnswer. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const asked = parseRestore(await event.request.json().catch(() => null));
	if (!asked) error(400, 'Not understood');
	const what = {
		code: asked.side === 'before' ? 'undone' : 'brought-back',
		data: { version: asked.versionId },
	};
	const saved = await getDeskFiles().restore({ ...asked, what, by: 'desk' });
	if (saved.ok) void getStore().reload();
	return Response.json(saveAnswer(saved, event.url.searchParams.get('lang') ?? ''), {
		headers: { 'cache-control': 'no-store' },
	});
};
