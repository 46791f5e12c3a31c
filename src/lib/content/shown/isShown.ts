/** Days on which something is shown, both included; absent = no bound on that side. */
export interface Show {
	/** YYYY-MM-DD */
	from?: string;
	until?: string;
}

/** A day of the calendar that there is, YYYY-MM-DD. */
export function isDay(text: string): boolean {
	if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
	const date = new Date(`${text}T00:00:00Z`);
	return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

/** Whether something is shown on a day, YYYY-MM-DD. */
export const isShown = (show: Show | undefined, day: string): boolean =>
	!show || ((show.from ?? day) <= day && day <= (show.until ?? day));

/**
 * The day that the calendar on the wall shows at a moment (milliseconds since 1970) in a time zone (IANA name; the
 * computer's own where it is left out), YYYY-MM-DD.
 */
export function dayIn(timeZone: string | undefined, now: number): string {
	const parts = new Intl.DateTimeFormat('en', {
		timeZone,
		calendar: 'gregory',
		numberingSystem: 'latn',
		year: 'numeric',
		month: '2-digit',
		day: '2-digit',
	}).formatToParts(now);
	const part = (type: string): string => parts.find((one) => one.type === type)!.value;
	return `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
}

/** Whether this computer knows a time zone of that name. */
export function isTimeZone(name: string): boolean {
	try {
		new Intl.DateTimeFormat('en', { timeZone: name });
		// "+01:00" has no summer time
		return !/^[+-]/.test(name);
	} catch {
		return false;
	}
}
