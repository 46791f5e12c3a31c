import { ASKED_UNITS, type NewSpecimenAnswer } from '$lib/content/newSpecimen';
import { ID_PATTERN } from '$lib/content/schemas';
import { chooseLanguage } from '$lib/server/chooseLanguage';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { contentDir, getStore } from '$lib/server/getStore';
import { replaceScan, type ReplaceFailure } from '$lib/server/newSpecimen/replaceScan';
import { saveAnswer } from '$lib/server/saveAnswer';
import { staffOnly } from '$lib/server/staffOnly';
import { getScanUploads } from '$lib/server/uploads/getScanUploads';
import { error } from '@sveltejs/kit';
import { z } from 'zod';
import type { RequestHandler } from './$types';

const schema = z.strictObject({ upload: z.string().max(40), units: z.enum(ASKED_UNITS) });

/** Puts a scan that was sent in into the place of a specimen's: `{ upload, units }` is answered with a NewSpecimenAnswer. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const { id } = event.params;
	const asked = schema.safeParse(await event.request.json().catch(() => null));
	if (!asked.success || !ID_PATTERN.test(id)) error(400, 'Not understood');
	const done = await replaceScan(getDeskFiles(), getScanUploads(), contentDir(), id, asked.data);
	let answer: NewSpecimenAnswer;
	if (done.ok) {
		void getStore().reload();
		const { saved, needsMarks } = done.value;
		answer = { ok: true, version: saved.version, next: needsMarks ? 'mark' : 'specimen' };
	} else if (isOwn(done.problem)) answer = { ok: false, failure: done.problem };
	else {
		const lang = chooseLanguage(getStore().everything(), event.url.searchParams.get('lang'));
		answer = saveAnswer({ ok: false, problem: done.problem }, lang) as NewSpecimenAnswer;
	}
	return Response.json(answer, { headers: { 'cache-control': 'no-store' } });
};

type Own = Extract<ReplaceFailure, { code: 'upload-gone' | 'no-scan' | 'not-editable' }>;
const isOwn = (failure: ReplaceFailure): failure is Own =>
	['upload-gone', 'no-scan', 'not-editable'].includes(failure.code);
