import { error } from '@sveltejs/kit';
import { fsReader } from '$lib/server/fsReader';
import { contentDir, getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { tableColumns } from '$lib/server/table/columns';
import { exportTable } from '$lib/server/table/exportTable';
import { readExactly, specimenFiles } from '$lib/server/table/specimenFiles';
import type { RequestHandler } from './$types';

/** All specimens as a table; `?for=semicolon` as French and Spanish spreadsheets want it. For staff only. */
export const GET: RequestHandler = async (event) => {
	staffOnly(event);
	const exhibit = getStore().current();
	if (!exhibit) error(503, 'Not ready');
	const folder = contentDir();
	const { specimens } = await specimenFiles(fsReader(folder), (path) => readExactly(folder, path));
	const columns = tableColumns(exhibit.languages.map(({ code }) => code));
	const delimiter = event.url.searchParams.get('for') === 'semicolon' ? ';' : ',';
	return new Response(exportTable(specimens, columns, delimiter), {
		headers: {
			'content-type': 'text/csv; charset=utf-8',
			'content-disposition': 'attachment; filename="specimens.csv"',
			'cache-control': 'no-store',
		},
	});
};
