import { error } from '@sveltejs/kit';
import { getCounts } from '$lib/server/counts/getCounts';
import { usePeriod } from '$lib/server/counts/usePeriod';
import { useReport } from '$lib/server/counts/useReport';
import { useTable } from '$lib/server/counts/useTable';
import { staffOnly } from '$lib/server/staffOnly';
import type { RequestHandler } from './$types';

/** Use of the exhibit as a table; `?for=semicolon` as French and Spanish spreadsheets want it. For staff only. */
export const GET: RequestHandler = async (event) => {
	staffOnly(event);
	const { searchParams } = event.url;
	const { from } = usePeriod(searchParams.get('days'), new Date());
	const counts = getCounts();
	const report = counts
		? await useReport(counts, from).catch(() => error(503, 'The counts cannot be read'))
		: null;
	return new Response(useTable(report, searchParams.get('for') === 'semicolon' ? ';' : ','), {
		headers: {
			'content-type': 'text/csv; charset=utf-8',
			'content-disposition': 'attachment; filename="use.csv"',
			'cache-control': 'no-store',
		},
	});
};
