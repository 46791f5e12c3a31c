import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { fsReader } from '$lib/server/fsReader';
import { contentDir, getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import type { ImportFailure } from '$lib/content/tableImport';
import { parseImportRequest, runImport, unpackTable } from '$lib/server/table/importRequest';
import type { RequestHandler } from './$types';

/**
 * Plans the import of a table (the body, gzipped; `columns` in the query says what its columns are) and answers
 * `{ ok: true, plan }`; with `write=HASH` of a plan that still holds, writes it. Else `{ ok: false, problem }`.
 */
export const POST: RequestHandler = async (event) => {
	staffOnly(event);
	const { request, url } = event;
	const asked = parseImportRequest(url.searchParams);
	const exhibit = getStore().current();
	if (!asked || !exhibit) return refuse({ code: 'not-editable' }, asked ? 503 : 400);
	const bytes = unpackTable(new Uint8Array(await request.arrayBuffer()));
	if (!bytes.ok) return refuse(bytes.problem, 422);
	const folder = contentDir();
	const languages = exhibit.languages.map(({ code }) => code);
	const done = await runImport(getDeskFiles(), folder, fsReader(folder), languages, bytes.value, asked);
	if (done.ok) return answer({ ok: true, plan: done.value }, 200);
	return refuse(done.problem, done.problem.code === 'changed-meanwhile' ? 409 : 422);
};

const refuse = (problem: ImportFailure, status: number): Response => answer({ ok: false, problem }, status);

const answer = (body: object, status: number): Response =>
	Response.json(body, { status, headers: { 'cache-control': 'no-store' } });
