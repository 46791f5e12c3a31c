/** YYYY-MM-DD of a moment in this machine's time zone. */
export function dayOf(moment: Date): string {
	const two = (n: number): string => String(n).padStart(2, '0');
	return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

/** The first day that is still kept when `keep` days are, today among them. */
export function firstKeptDay(today: Date, keep: number): string {
	const day = new Date(today.getFullYear(), today.getMonth(), today.getDate() - (keep - 1), 12);
	return dayOf(day);
}
