/** A day (YYYY-MM-DD) as people write it. */
export const sayDay = (day: string, lang: string): string =>
	new Intl.DateTimeFormat(lang, { dateStyle: 'medium', timeZone: 'UTC' }).format(
		new Date(`${day}T00:00:00Z`),
	);
