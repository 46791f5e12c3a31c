import { getCounts } from '$lib/server/counts/getCounts';
import { quizReport } from '$lib/server/counts/quizReport';
import { staffOnly } from '$lib/server/staffOnly';
import { stringify } from 'csv-stringify/sync';
import type { RequestHandler } from './$types';

const HEAD = [
	'question',
	'option',
	'right',
	'count',
	'share',
	'answers',
	'difficulty',
	'low_95',
	'high_95',
	'd',
	'r',
	'advice',
];
const plain = (value: number | null | undefined): string =>
	value === null || value === undefined ? '' : String(Number(value.toFixed(4)));

/** The item analysis as a table, one line an option; what is hidden is empty. For staff only. */
export const GET: RequestHandler = async (event) => {
	staffOnly(event);
	const counts = getCounts();
	const questions = counts ? (await quizReport(counts)).questions : [];
	const rows = questions.flatMap(({ question, options, answers, p, interval, d, r, advice }) =>
		options.map(({ option, right, count, share }) => [
			question,
			option,
			right ? 'yes' : 'no',
			plain(count),
			plain(share),
			plain(answers),
			plain(p),
			plain(interval?.low),
			plain(interval?.high),
			plain(d),
			plain(r),
			advice.join(' '),
		]),
	);
	// spreadsheets know UTF-8 by its mark
	return new Response('\uFEFF' + stringify([HEAD, ...rows], { record_delimiter: 'windows' }), {
		headers: {
			'content-type': 'text/csv; charset=utf-8',
			'content-disposition': 'attachment; filename="quiz-questions.csv"',
			'cache-control': 'no-store',
		},
	});
};
