import { describe, expect, it } from 'vitest';
import { loadContent } from '../../../src/lib/content/loadContent';
import { dayIn, isDay, isShown, isTimeZone } from '../../../src/lib/content/shown/isShown';
import { memoryReader } from './memoryReader';
import { VALID_CONTENT } from './validContent';

describe('isShown', () => {
	it('counts both days in, and has no bound where none is given', () => {
		const show = { from: '2026-12-01', until: '2027-02-28' };
		const days = ['2026-11-30', '2026-12-01', '2027-02-28', '2027-03-01'];
		expect(days.map((day) => isShown(show, day))).toEqual([false, true, true, false]);
		expect(days.map((day) => isShown({ from: show.from }, day))).toEqual([false, true, true, true]);
		expect(days.map((day) => isShown({ until: show.until }, day))).toEqual([true, true, true, false]);
		expect(isShown(undefined, days[0])).toBe(true);
	});

	it('knows the days that there are', () => {
		for (const day of ['2026-02-28', '2028-02-29', '2000-02-29', '0999-12-31']) expect(isDay(day)).toBe(true);
		const none = [
			'2026-02-29',
			'1900-02-29',
			'2026-13-01',
			'2026-04-31',
			'2026-1-1',
			'01/12/2026',
			'2026-12',
			'',
		];
		for (const day of none) expect(isDay(day)).toBe(false);
	});

	it('takes the day of the place, also where summer time begins and ends', () => {
		// tz database: London is at UTC in winter and an hour ahead from 29 March to 25 October 2026
		const at = (text: string) => Date.parse(text);
		expect(dayIn('Europe/London', at('2026-12-01T00:00:00Z'))).toBe('2026-12-01');
		expect(dayIn('Europe/London', at('2026-11-30T23:59:59Z'))).toBe('2026-11-30');
		expect(dayIn('Europe/London', at('2026-06-30T23:00:00Z'))).toBe('2026-07-01');
		expect(dayIn('Europe/London', at('2026-03-29T00:59:59Z'))).toBe('2026-03-29');
		expect(dayIn('Europe/London', at('2026-10-24T22:59:59Z'))).toBe('2026-10-24');
		expect(dayIn('Europe/London', at('2026-10-24T23:00:00Z'))).toBe('2026-10-25');
		// Kiritimati is 14 h ahead, Pago Pago 11 h behind
		expect(dayIn('Pacific/Kiritimati', at('2026-12-01T10:00:00Z'))).toBe('2026-12-02');
		expect(dayIn('Pacific/Pago_Pago', at('2026-12-01T10:59:00Z'))).toBe('2026-11-30');
		expect(isTimeZone('Europe/London')).toBe(true);
		for (const name of ['Europe/Londn', '', '+01:00', 'London time']) expect(isTimeZone(name)).toBe(false);
	});
});

describe('content that is shown on some days', () => {
	const now = Date.UTC(2026, 11, 1, 12);
	const check = async (file: string, change: (text: string) => string) => {
		const files = { ...VALID_CONTENT, [file]: change(VALID_CONTENT[file]) };
		return loadContent(memoryReader(files), undefined, now);
	};
	const FACTS = 'specimens/skm-0001/specimen.yaml';
	const withExhibit = (rooms: string) =>
		check('exhibit.yaml', (text) => text.replace('rooms: [compare]', `rooms: ${rooms}`));

	it('takes a draft and its days', async () => {
		const { draft, problems } = await check(
			FACTS,
			(text) => `status: draft\nshow: { from: 2026-12-24, until: 2027-02-28 }\n${text}`,
		);
		expect(problems).toEqual([]);
		expect(draft?.specimens[0]).toMatchObject({
			id: 'skm-0001',
			status: 'draft',
			show: { from: '2026-12-24', until: '2027-02-28' },
		});
		const published = await check(FACTS, (text) => `status: published\n${text}`);
		expect(published.draft?.specimens[0]).not.toHaveProperty('status');
	});

	it('takes rooms with days, specimens in an order and a time zone', async () => {
		const { draft, problems } = await withExhibit(
			'[compare, { room: quiz, show: { from: 2027-01-01 } }]\nspecimens_first: [skm-0002]\ntime_zone: Europe/Paris',
		);
		expect(problems).toEqual([]);
		expect(draft).toMatchObject({
			rooms: ['compare', 'quiz'],
			roomShows: { quiz: { from: '2027-01-01' } },
			timeZone: 'Europe/Paris',
		});
		expect(draft?.specimens.map(({ id }) => id)).toEqual(['skm-0002', 'skm-0001']);
		expect(draft).not.toHaveProperty('specimensFirst');
		expect(draft).not.toHaveProperty('roomIndex');
	});

	it('holds the last day to be over only when it is', async () => {
		const until = async (day: string) =>
			(await check(FACTS, (text) => `show: { until: ${day} }\n${text}`)).problems.map(({ id }) => id);
		expect(await until('2026-12-01')).toEqual([]);
		expect(await until('2026-11-30')).toEqual(['show-is-over']);
	});

	it.each([
		['[quiz, { room: compar }]', 'unknown-room', 'rooms[1]', ['quiz']],
		['[quiz, { rom: compare }]', 'unknown-key', 'rooms[1].rom', ['quiz', 'compare']],
		['[quiz, { room: quiz }]', 'duplicate-id', 'rooms[1]', ['quiz']],
		['[quiz, { room: compare, show: { from: x } }]', 'not-a-day', 'rooms[1].show.from', ['quiz', 'compare']],
		['[quiz, { room: compare, show: 2026 }]', 'not-fields', 'rooms[1].show', ['quiz', 'compare']],
	])('says what is the matter with rooms: %s', async (rooms, id, path, shown) => {
		const { draft, problems } = await withExhibit(rooms);
		expect(problems.map((one) => [one.id, one.path])).toEqual([[id, path]]);
		expect(draft?.rooms).toEqual(shown);
	});
});
