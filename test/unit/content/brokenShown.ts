import type { BrokenCase } from './brokenContent';
import { edited } from './validContent';

const ALL = ['skm-0001', 'skm-0002'];
const FACTS = 'specimens/skm-0001/specimen.yaml';
const facts = (line: string) => edited(FACTS, 'accession:', `${line}\naccession:`);
const exhibit = (lines: string) => edited('exhibit.yaml', 'rooms: [compare]', lines);

/** What is shown when, and in which order. */
export const brokenShown: BrokenCase[] = [
	{
		name: 'a first day that no calendar has',
		overlay: facts('show: { from: 2026-02-30 }'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${FACTS}:1:15`,
				id: 'not-a-day',
				severity: 'error',
				path: 'show.from',
				message: '"2026-02-30" is not a day of the calendar, written as year, month and day.',
				remedy: 'Write from: 2026-12-01',
			},
		],
	},
	{
		name: 'a last day before the first',
		overlay: facts('show: { from: 2027-02-28, until: 2026-12-01 }'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${FACTS}:1:34`,
				id: 'until-before-from',
				severity: 'error',
				path: 'show.until',
				message:
					'The last day (2026-12-01) comes before the first (2027-02-28), so this would never be shown.',
				remedy: 'Swap them: { from: 2026-12-01, until: 2027-02-28 }',
			},
		],
	},
	{
		name: 'a last day that is over',
		overlay: facts('show: { until: 2020-01-31 }'),
		shows: ALL,
		problems: [
			{
				at: `${FACTS}:1:16`,
				id: 'show-is-over',
				severity: 'warning',
				path: 'show.until',
				message: 'The last day was 2020-01-31, so this is not shown any more.',
				remedy: 'Write a later day. To have it shown always, delete the line that begins with show:',
			},
		],
	},
	{
		name: 'no room that is open today',
		overlay: exhibit('rooms: [{ room: compare, show: { until: 2020-01-31 } }]'),
		shows: ALL,
		problems: [
			{
				at: 'exhibit.yaml:5:1',
				id: 'no-room-shown',
				severity: 'warning',
				path: 'rooms',
				message: 'No room is shown today: visitors find nothing to open.',
				remedy: 'Change the days of one of the rooms. To have it shown always, delete its show:',
			},
			{
				at: 'exhibit.yaml:5:41',
				id: 'show-is-over',
				severity: 'warning',
				path: 'rooms[0].show.until',
				message: 'The last day was 2020-01-31, so this is not shown any more.',
				remedy: 'Write a later day. To have it shown always, delete the line that begins with show:',
			},
		],
	},
	{
		name: 'a specimen put first that is not there',
		overlay: exhibit('rooms: [compare]\nspecimens_first: [skm-001]'),
		shows: ALL,
		problems: [
			{
				at: 'exhibit.yaml:6:19',
				id: 'first-not-there',
				severity: 'warning',
				path: 'specimens_first[0]',
				message: 'There is no specimen "skm-001" to be put first. Did you mean skm-0001?',
				remedy: 'Write skm-0001',
			},
		],
	},
	{
		name: 'a time zone that nobody knows',
		overlay: exhibit('rooms: [compare]\ntime_zone: Europe/Londn'),
		shows: ALL,
		problems: [
			{
				at: 'exhibit.yaml:6:12',
				id: 'unknown-time-zone',
				severity: 'error',
				path: 'time_zone',
				message: 'There is no time zone "Europe/Londn". Did you mean Europe/London?',
				remedy: 'Write time_zone: Europe/London, the name of a continent and a large town.',
			},
		],
	},
];
