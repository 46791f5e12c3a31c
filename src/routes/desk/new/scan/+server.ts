import type { UploadAnswer } from '$lib/content/scanUpload';
import { chooseLanguage } from '$lib/server/chooseLanguage';
import { getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { getScanUploads } from '$lib/server/uploads/getScanUploads';
import { answerUpload } from '$lib/server/uploads/answerUpload';
import type { RequestHandler } from './$types';

/**
 * Takes a scan in: the file itself as the body, its name as `?name=`. Answered with an UploadAnswer. Nothing comes into the
 * content folder before a specimen is made of it.
 */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const { request, url } = event;
	const lang = chooseLanguage(getStore().current(), url.searchParams.get('lang'));
	const answer: UploadAnswer = await answerUpload(
		getScanUploads(),
		request,
		url.searchParams.get('name') ?? '',
		lang,
	);
	return Response.json(answer, { headers: { 'cache-control': 'no-store' } });
};

/** Lets a scan go that was taken in and is not wanted: `?upload=`. */
export const DELETE: RequestHandler = async (event) => {
	staffOnly(event);
	await getScanUploads().discard(event.url.searchParams.get('upload') ?? '');
	return new Response(null, { status: 204 });
};
