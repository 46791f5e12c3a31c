import { deskProblem, wordDesk, type DeskProblem } from '../../../../../lib/server/deskProblem';
import { wordedIn } from '../../../../../lib/content/wordProblem';
import { getDeskFiles } from '../../../../../lib/server/desk/getDeskFiles';
import { contentDir } from '../../../../../lib/server/getStore';
import { parseSave, saveSpecimen } from '../../../../../lib/server/marking';
import { staffOnly } from '../../../../../lib/server/staffOnly';
import type { RequestHandler } from './$types';

const STATUS: Readonly<Record<string, number>> = {
	'not-understood': 400,
	'no-such-specimen': 404,
	'changed-meanwhile': 409,
	'not-written': 500,
};

/**
 * Saves marks: `{ baseHash, crown?, features? }` (see SaveRequest) is answered with `{ ok: true, hash }`
 * or `{ ok: false, problem: { code, lang, message, remedy } }`, worded in the language of `?lang=`
 * where it is one of ours, which `lang` tells.
 */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const { request, params } = event;
	const isJson = /^application\/json\b/i.test(request.headers.get('content-type') ?? '');
	const asked = isJson ? parseSave(await request.json().catch(() => null)) : null;
	const language = event.url.searchParams.get('lang') ?? 'en';
	if (!asked) {
		return refuse(deskProblem('not-understood'), language);
	}
	const { baseHash, ...changes } = asked;
	const saved = await saveSpecimen(getDeskFiles(), contentDir(), params.id, baseHash, changes);
	return saved.ok ? answer({ ok: true, hash: saved.value.hash }, 200) : refuse(saved.problem, language);
};

const refuse = (problem: DeskProblem, language: string): Response =>
	answer(
		{ ok: false, problem: { code: problem.code, lang: wordedIn(language), ...wordDesk(problem, language) } },
		STATUS[problem.code] ?? 422,
	);

const answer = (body: object, status: number): Response =>
	Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
