import { WEEKDAYS, type OpenHours } from '../../content/screens/types';

/** lit: as usual; dim: the attract loop is darker; dark: black, unless somebody is there */
export type DayPlan = 'lit' | 'dim' | 'dark';

const DAY_min = 1440;

/**
 * What a screen should be by the clock on its wall. It asks the clock alone and remembers nothing, so that a clock that
 * jumps, or turns to summer time, is right at the next look. Hours that end at or before their beginning end on the
 * next day. null = always lit.
 */
export function dayPlan(hours: readonly OpenHours[] | null, clock: Date): DayPlan {
	if (hours === null) return 'lit';
	const now_min = clock.getHours() * 60 + clock.getMinutes();
	const today = (clock.getDay() + 6) % 7;
	// of the evening before there may be something left
	return inHours(hours, today, now_min) ?? inHours(hours, (today + 6) % 7, now_min + DAY_min) ?? 'dark';
}

function inHours(hours: readonly OpenHours[], day: number, at_min: number): 'lit' | 'dim' | null {
	const found = hours.find(({ days }) => days.includes(WEEKDAYS[day]));
	if (!found) return null;
	const { from_min, dimFrom_min, until_min } = found;
	const after = (time_min: number) => (time_min <= from_min ? time_min + DAY_min : time_min);
	if (at_min < from_min || at_min >= after(until_min)) return null;
	return dimFrom_min !== undefined && at_min >= after(dimFrom_min) ? 'dim' : 'lit';
}
