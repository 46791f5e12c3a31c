import { say, short } from '../parts';
import { didYouMean } from './voice';

/** What is shown when, and in which order. */
export const SHOWN = {
	'not-a-day': (d: { key: string; found: string }) =>
		say(
			`"${short(d.found)}" is not a day of the calendar, written as year, month and day.`,
			`Write ${d.key}: 2026-12-01`,
		),
	'until-before-from': (d: { from: string; until: string }) =>
		say(
			`The last day (${d.until}) comes before the first (${d.from}), so this would never be shown.`,
			`Swap them: { from: ${d.until}, until: ${d.from} }`,
		),
	'show-is-over': (d: { until: string }) =>
		say(
			`The last day was ${d.until}, so this is not shown any more.`,
			'Write a later day. To have it shown always, delete the line that begins with show:',
		),
	'no-room-shown': () =>
		say(
			'No room is shown today: visitors find nothing to open.',
			'Change the days of one of the rooms. To have it shown always, delete its show:',
		),
	'first-not-there': (d: { found: string; meant?: string }) =>
		say(
			`There is no specimen "${short(d.found)}" to be put first.${didYouMean(d.meant)}`,
			d.meant ? `Write ${d.meant}` : 'Delete it here, or write the name of a folder in specimens/.',
		),
	'unknown-time-zone': (d: { found: string; meant?: string }) =>
		say(
			`There is no time zone "${short(d.found)}".${didYouMean(d.meant)}`,
			`Write time_zone: ${d.meant ?? 'Europe/London'}, the name of a continent and a large town.`,
		),
} as const;
