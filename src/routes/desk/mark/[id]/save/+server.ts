import type { DeskProblem } from '../../../../../lib/server/deskProblem';
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
 * or `{ ok: false, problem: { code, message, remedy } }`.
 */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const { request, params } = event;
	const isJson = /^application\/json\b/i.test(request.headers.get('content-type') ?? '');
	const asked = isJson ? parseSave(await request.json().catch(() => null)) : null;
	if (!asked) {
		return refuse({
			code: 'not-understood',
			message: 'The page sent something that is not a set of marks; nothing was written.',
			remedy: 'Load the page again, and set the marks once more.',
		});
	}
	const { baseHash, ...changes } = asked;
	const saved = await saveSpecimen(contentDir(), params.id, baseHash, changes);
	return saved.ok ? answer({ ok: true, hash: saved.value.hash }, 200) : refuse(saved.problem);
};

const refuse = (problem: DeskProblem): Response =>
	answer({ ok: false, problem }, STATUS[problem.code] ?? 422);

const answer = (body: object, status: number): Response =>
	Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
