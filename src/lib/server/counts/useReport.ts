import { wilson } from '../../domain/quiz/items/difficulty';
import { DWELL_BUCKETS, medianBucket, type DwellBucket } from '../../domain/use/dwell';
import { USE_ROOMS, USE_STEPS } from '../../domain/use/useFacts';
import type { CountsStore, Tally } from './countsStore';
import { hideDays } from './hideDays';
import { hideSmall } from './hideSmall';

/** Below this nothing is said of a middle or a share. */
export const FEWEST_TO_SAY = 10;
/** Weekdays are compared only where there were so many days with visits, two weeks of six. */
export const FEWEST_DAYS = 12;

/** A count under five is hidden (null) everywhere here, and with it as many others as it takes. */
export interface DayCount {
	day: string;
	count: number | null;
}
export interface Dwell {
	/** in the order of DWELL_BUCKETS */
	counts: (number | null)[];
	/** step in which the middle stay lies; null = too few to say */
	median: DwellBucket | null;
}
export interface RoomUse {
	room: string;
	/** stays in the room; somebody who comes back counts again */
	stays: number | null;
	dwell: Dwell;
	/** of these stays, so many were the end of the visit */
	left: number | null;
	/** the same as a share with its 95 % interval; null = too few, or it would give a hidden count back */
	share: { p: number; low: number; high: number } | null;
	days: DayCount[];
}
export interface ToothUse {
	specimen: string;
	/** laid on the table by a visitor, or lay there already */
	laid: number | null;
	lay: number | null;
	dwell: Dwell;
	days: DayCount[];
}
export interface UseReport {
	/** first and last day of the period with a visit; null = none */
	from: string | null;
	to: string | null;
	/** days with a visit */
	days: number;
	visits: number | null;
	/** every day from the first to the last, also those without a visit */
	byDay: DayCount[];
	/** Monday first: visits on such a day in the middle, and on how many days that rests; null = too few days */
	byWeekday: { days: number; mean: number | null }[] | null;
	rooms: RoomUse[];
	/** most used first */
	teeth: ToothUse[];
	/** where visits ended */
	left: { room: string; step: string; count: number | null }[];
	/** how they ended: nobody touched any more, or the page was closed */
	ends: { reset: number | null; closed: number | null };
	screens: { screen: string; visits: number | null }[];
	languages: { language: string; count: number | null }[];
	settings: { setting: string; count: number | null }[];
}

/** How the exhibit was used, from a day on; without one, as long as counts are kept. */
export async function useReport(store: CountsStore, fromDay?: string): Promise<UseReport> {
	const [rooms, teeth, left, languages, settings] = await Promise.all(
		(['use-room', 'use-tooth', 'use-left', 'use-language', 'use-setting'] as const).map((kind) =>
			store.tallies(kind, fromDay),
		),
	);
	const days = daysBetween(left.map(({ day }) => day));
	const perDay = perDays(left, days);
	const visitDays = perDay.filter((count) => count > 0).length;
	return {
		from: days[0] ?? null,
		to: days.at(-1) ?? null,
		days: visitDays,
		visits: one(sum(left)),
		byDay: told(perDay, days),
		byWeekday: visitDays < FEWEST_DAYS ? null : weekdays(perDay, days),
		rooms: roomUse(rooms, left, days),
		teeth: toothUse(teeth, days),
		left: leftAt(left),
		ends: endsOf(left),
		screens: named(left, 'screen').map(([screen, visits]) => ({ screen, visits })),
		languages: named(languages, 'language').map(([language, count]) => ({ language, count })),
		settings: named(settings, 'setting').map(([setting, count]) => ({ setting, count })),
	};
}

const sum = (tallies: readonly Tally[]): number => tallies.reduce((all, { count }) => all + count, 0);
const one = (count: number): number | null => hideSmall([count])[0];
const of = (tallies: readonly Tally[], fact: string, value: unknown): Tally[] =>
	tallies.filter(({ facts }) => facts[fact] === value);
const values = (tallies: readonly Tally[], fact: string): string[] =>
	[
		...new Set(tallies.flatMap(({ facts }) => (facts[fact] === undefined ? [] : [String(facts[fact])]))),
	].sort();

/** Days of the calendar from the first to the last of these; noon, so that no clock change skips one. */
function daysBetween(days: readonly string[]): string[] {
	if (days.length === 0) return [];
	const sorted = [...days].sort();
	const all: string[] = [];
	for (
		let at = new Date(`${sorted[0]}T12:00:00Z`), last = sorted[sorted.length - 1];
		at.toISOString().slice(0, 10) <= last;
		at = new Date(at.getTime() + 86_400_000)
	)
		all.push(at.toISOString().slice(0, 10));
	return all;
}
/** 0 = Monday */
const weekday = (day: string): number => (new Date(`${day}T12:00:00Z`).getUTCDay() + 6) % 7;
const perDays = (tallies: readonly Tally[], days: readonly string[]): number[] => {
	const counts = new Map<string, number>();
	for (const { day, count } of tallies) counts.set(day, (counts.get(day) ?? 0) + count);
	return days.map((day) => counts.get(day) ?? 0);
};
const told = (counts: readonly number[], days: readonly string[]): DayCount[] =>
	hideDays(counts, days.map(weekday)).map((count, i) => ({ day: days[i], count }));

/** Days without a visit are taken for days on which the museum was closed. */
function weekdays(counts: readonly number[], days: readonly string[]): UseReport['byWeekday'] {
	return Array.from({ length: 7 }, (_, at) => {
		const own = counts.filter((count, i) => count > 0 && weekday(days[i]) === at);
		const all = own.reduce((total, count) => total + count, 0);
		return { days: own.length, mean: own.length === 0 ? 0 : one(all) === null ? null : all / own.length };
	});
}

function dwellOf(tallies: readonly Tally[]): Dwell {
	const counts = DWELL_BUCKETS.map((bucket) => sum(of(tallies, 'dwell', bucket)));
	return {
		counts: hideSmall(counts),
		median: sum(tallies) < FEWEST_TO_SAY ? null : medianBucket(counts),
	};
}

function roomUse(rooms: readonly Tally[], left: readonly Tally[], days: readonly string[]): RoomUse[] {
	const used = USE_ROOMS.filter((room) => of(rooms, 'room', room).length > 0);
	// how many left where is told for every room, and so is the sum
	const ends = hideSmall(used.map((room) => sum(of(left, 'room', room))));
	return used.map((room, i) => {
		const own = of(rooms, 'room', room);
		const stays = sum(own);
		const end = ends[i];
		const stayed = end === null ? null : one(stays - end);
		const interval = end === null || stayed === null || stays < FEWEST_TO_SAY ? null : wilson(end, stays);
		return {
			room,
			stays: one(stays),
			dwell: dwellOf(own),
			// the rest would tell it
			left: stayed === null ? null : end,
			share: interval && end !== null ? { p: end / stays, ...interval } : null,
			days: told(perDays(own, days), days),
		};
	});
}

function toothUse(teeth: readonly Tally[], days: readonly string[]): ToothUse[] {
	return values(teeth, 'specimen')
		.map((specimen) => ({ specimen, own: of(teeth, 'specimen', specimen) }))
		.sort((a, b) => sum(of(b.own, 'laid', true)) - sum(of(a.own, 'laid', true)) || sum(b.own) - sum(a.own))
		.map(({ specimen, own }) => {
			const [laid, lay] = hideSmall([sum(of(own, 'laid', true)), sum(of(own, 'laid', false))]);
			return { specimen, laid, lay, dwell: dwellOf(own), days: told(perDays(own, days), days) };
		});
}

/** Where visits ended, room by room in the order of its steps. */
function leftAt(left: readonly Tally[]): UseReport['left'] {
	const used = USE_ROOMS.filter((room) => of(left, 'room', room).length > 0);
	const whole = hideSmall(used.map((room) => sum(of(left, 'room', room))));
	return used.flatMap((room, i) => {
		const own = of(left, 'room', room);
		const steps = USE_STEPS[room].filter((step) => of(own, 'step', step).length > 0);
		const shown = hideSmall(steps.map((step) => sum(of(own, 'step', step))));
		// the steps of a room whose sum is hidden are hidden with it
		return steps.map((step, at) => ({ room, step, count: whole[i] === null ? null : shown[at] }));
	});
}

function endsOf(left: readonly Tally[]): UseReport['ends'] {
	const [reset, closed] = hideSmall([sum(of(left, 'by', 'reset')), sum(of(left, 'by', 'closed'))]);
	return { reset, closed };
}

function named(tallies: readonly Tally[], fact: string): [string, number | null][] {
	const names = values(tallies, fact);
	const counts = names.map((name) => sum(tallies.filter(({ facts }) => facts[fact] === name)));
	const shown = hideSmall(counts);
	return names
		.map((name, i): [string, number | null, number] => [name, shown[i], counts[i]])
		.sort((a, b) => b[2] - a[2])
		.map(([name, count]) => [name, count]);
}
