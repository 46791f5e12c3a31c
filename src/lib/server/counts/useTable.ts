import { stringify } from 'csv-stringify/sync';
import { DWELL_BUCKETS } from '../../domain/use/dwell';
import type { UseReport } from './useReport';

const HEAD = ['day', 'what', 'room', 'specimen', 'detail', 'count'];

/**
 * The report as one table, a line a count: those with a day first, then those of the whole period. What is hidden is an
 * empty cell; days without any are left out. In UTF-8 with a mark, by which spreadsheets know it.
 */
export function useTable(report: UseReport | null, delimiter: ',' | ';'): string {
	const rows: (string | number | null)[][] = [];
	const add = (day: string, what: string, where: [string, string, string], count: number | null) =>
		rows.push([day, what, ...where, count]);
	if (report) {
		for (const { day, count } of report.byDay) if (count !== 0) add(day, 'visits', ['', '', ''], count);
		for (const { room, days } of report.rooms)
			for (const { day, count } of days) if (count !== 0) add(day, 'stays', [room, '', ''], count);
		for (const { specimen, days } of report.teeth)
			for (const { day, count } of days) if (count !== 0) add(day, 'tooth', ['', specimen, ''], count);
		add('', 'visits', ['', '', ''], report.visits);
		for (const { room, stays, dwell } of report.rooms) {
			add('', 'stays', [room, '', ''], stays);
			for (const [i, bucket] of DWELL_BUCKETS.entries())
				add('', 'dwell', [room, '', bucket], dwell.counts[i]);
		}
		for (const { specimen, laid, lay, dwell } of report.teeth) {
			add('', 'tooth', ['', specimen, 'laid by a visitor'], laid);
			add('', 'tooth', ['', specimen, 'lay there already'], lay);
			for (const [i, bucket] of DWELL_BUCKETS.entries())
				add('', 'dwell', ['', specimen, bucket], dwell.counts[i]);
		}
		for (const { room, step, count } of report.left) add('', 'left', [room, '', step], count);
		add('', 'end', ['', '', 'nobody touched any more'], report.ends.reset);
		add('', 'end', ['', '', 'page closed'], report.ends.closed);
		for (const { screen, visits } of report.screens) add('', 'screen', ['', '', screen], visits);
		for (const { language, count } of report.languages) add('', 'language', ['', '', language], count);
		for (const { setting, count } of report.settings) add('', 'setting', ['', '', setting], count);
	}
	return '\uFEFF' + stringify([HEAD, ...rows], { record_delimiter: 'windows', delimiter });
}
