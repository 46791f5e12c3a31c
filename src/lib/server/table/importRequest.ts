import { gunzipSync } from 'node:zlib';
import { z } from 'zod';
import { fail, ok, type Result } from '../../domain/result';
import type { ContentReader } from '../../content/draft';
import type { DeskFiles } from '../desk/deskFiles';
import { applyImport } from './applyImport';
import { planImport } from './planImport';
import { MOST_TABLE_BYTES, readTable } from './readTable';
import { readExactly, specimenFiles } from './specimenFiles';
import type { ImportAnswer, ImportFailure, TableProblem } from '../../content/tableImport';

/** What a page asks for with a table. */
export interface ImportRequest {
	/** column by number of its head; null leaves it out */
	chosen: Record<number, string | null>;
	/** hash of the plan that is to be written; null = only plan */
	write: string | null;
}

const chosenSchema = z.record(z.string().regex(/^\d{1,3}$/), z.string().max(60).nullable());

/** The request in an address's query; null where it is anything else. */
export function parseImportRequest(query: URLSearchParams): ImportRequest | null {
	let chosen: unknown;
	try {
		chosen = JSON.parse(query.get('columns') ?? '{}');
	} catch {
		return null;
	}
	const parsed = chosenSchema.safeParse(chosen);
	const write = query.get('write');
	if (!parsed.success || (write !== null && !/^[0-9a-f]{64}$/.test(write))) return null;
	return { chosen: parsed.data, write };
}

/** A table as the page sends it: packed, so that it is under the server's limit for a request. */
export function unpackTable(bytes: Uint8Array): Result<Uint8Array, TableProblem> {
	try {
		return ok(gunzipSync(bytes, { maxOutputLength: MOST_TABLE_BYTES }));
	} catch (cause) {
		const large = (cause as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE';
		return fail({ code: large ? 'too-large' : 'empty' });
	}
}

/**
 * Plans an import, or plans it again and writes it: only what the page was shown is written, so a plan whose hash is
 * no longer the same is `changed-meanwhile`.
 */
export async function runImport(
	desk: Pick<DeskFiles, 'save'>,
	contentDir: string,
	reader: ContentReader,
	languages: readonly string[],
	bytes: Uint8Array,
	{ chosen, write }: ImportRequest,
): Promise<Result<ImportAnswer, ImportFailure>> {
	const table = readTable(bytes);
	if (!table.ok) return table;
	const { specimens, unreadable } = await specimenFiles(reader, (path) => readExactly(contentDir, path));
	const planned = await planImport({ reader, specimens, unreadable, languages }, table.value, chosen);
	if (!planned.ok) return planned;
	const { edits, ...plan } = planned.value;
	const answer = { ...plan, files: edits.length };
	if (write === null) return ok(answer);
	if (write !== plan.hash) return fail({ code: 'changed-meanwhile', written: 0 });
	const applied = await applyImport(desk, edits);
	return applied.ok ? ok({ ...answer, written: applied.value.written }) : applied;
}
