import type { NewSpecimenAnswer } from '$lib/content/newSpecimen';
import { chooseLanguage } from '$lib/server/chooseLanguage';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { getStore } from '$lib/server/getStore';
import { createSpecimen, type CreateFailure } from '$lib/server/newSpecimen/createSpecimen';
import { parseNewSpecimen } from '$lib/server/newSpecimen/parseNewSpecimen';
import { saveAnswer } from '$lib/server/saveAnswer';
import { staffOnly } from '$lib/server/staffOnly';
import { getScanUploads } from '$lib/server/uploads/getScanUploads';
import { error } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** Makes a specimen: a NewSpecimen is answered with a NewSpecimenAnswer. */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const asked = parseNewSpecimen(await event.request.json().catch(() => null));
	const exhibit = getStore().everything();
	if (!asked || !exhibit) error(400, 'Not understood');
	const lang = chooseLanguage(exhibit, event.url.searchParams.get('lang'));
	const made = await createSpecimen(getDeskFiles(), getScanUploads(), asked, exhibit.languages[0].code);
	let answer: NewSpecimenAnswer;
	if (made.ok) {
		void getStore().reload();
		const { saved, needsMarks } = made.value;
		answer = { ok: true, version: saved.version, next: needsMarks ? 'mark' : 'specimen' };
	} else if (isOwn(made.problem)) answer = { ok: false, failure: made.problem };
	else answer = saveAnswer({ ok: false, problem: made.problem }, lang) as NewSpecimenAnswer;
	return Response.json(answer, { headers: { 'cache-control': 'no-store' } });
};

type Own = Extract<CreateFailure, { code: 'taken' | 'upload-gone' | 'no-form' }>;
const isOwn = (failure: CreateFailure): failure is Own =>
	['taken', 'upload-gone', 'no-form'].includes(failure.code);
