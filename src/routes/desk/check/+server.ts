import type { CheckAnswer } from '$lib/content/deskAnswers';
import { parseCheck } from '$lib/server/deskRequests';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { staffOnly } from '$lib/server/staffOnly';
import { wordedProblems } from '$lib/server/wordedProblems';
import { error } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** What the check would say of texts as if they were saved: `{ changes }` is answered with a CheckAnswer. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const asked = parseCheck(await event.request.json().catch(() => null));
	if (!asked) error(400, 'Not understood');
	const checked = await getDeskFiles().check(asked.changes);
	const lang = event.url.searchParams.get('lang') ?? '';
	const answer: CheckAnswer = checked.ok
		? {
				ok: true,
				problems: wordedProblems(checked.value.problems, lang),
				fresh: wordedProblems(checked.value.fresh, lang),
			}
		: { ok: false, failure: checked.problem };
	return Response.json(answer, {
		headers: { 'cache-control': 'no-store' },
	});
};
