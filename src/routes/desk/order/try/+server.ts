import type { FileChange } from '$lib/content/deskFiles';
import { arrange, parseArrange } from '$lib/server/arrange';
import { staffOnly } from '$lib/server/staffOnly';
import { error } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** What exhibit.yaml would be (ArrangeRequest → `{ changes }`, null where it cannot be changed here); nothing is written. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const asked = parseArrange(await event.request.json().catch(() => null));
	if (!asked) error(400, 'Not understood');
	const arranged = arrange(asked);
	const { path, base } = asked.file;
	const changes: FileChange[] | null = arranged.ok ? [{ path, base, text: arranged.value }] : null;
	return Response.json({ changes }, { headers: { 'cache-control': 'no-store' } });
};
