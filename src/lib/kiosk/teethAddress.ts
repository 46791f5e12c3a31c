/** The teeth on the table as an address tells them: ids between commas; nothing between them is an open place. */
export const teethAddress = {
	/** `a,b,c` -> [a, b, c]; `a,` -> [a, null]; `a` -> [a]; nothing -> [] */
	read: (teeth: string | null): (string | null)[] =>
		teeth ? teeth.split(',').map((id) => id.trim() || null) : [],
	write: (ids: readonly (string | null)[]): string => ids.map((id) => id ?? '').join(','),
};
