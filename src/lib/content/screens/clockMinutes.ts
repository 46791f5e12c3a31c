/** Minutes after midnight of a time as written, `9:30` -> 570; the schema has checked it. */
export function clockMinutes(time: string): number {
	const [hours, minutes] = time.split(':').map(Number);
	return hours * 60 + minutes;
}

/** What somebody meant who wrote a time in another way: `9.30`, `18`, `6 pm`, `18h30`; undefined where nobody can tell. */
export function timeMeant(found: string): string | undefined {
	const match = /^\s*(\d{1,2})(?:[:.h ]\s*(\d{2}))?\s*(h|am|a\.m\.|pm|p\.m\.)?\s*$/i.exec(found);
	if (!match) return undefined;
	const [, hour, minute = '00', half = ''] = match;
	let hours = Number(hour);
	if (/^p/i.test(half) && hours < 12) hours += 12;
	if (/^a/i.test(half) && hours === 12) hours = 0;
	if (hours > 23 || Number(minute) > 59) return undefined;
	return `${hours}:${minute}`;
}
