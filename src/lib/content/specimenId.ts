/** Longest id that is worked out. */
const MOST_SIGNS = 60;

/** A folder's name from an accession number: `SKM 0104` -> `skm-0104`, `Nº 12/a` -> `n-12-a`. May be empty. */
export function specimenId(accession: string): string {
	return accession
		.normalize('NFD')
		.replace(/\p{M}|[ºª]/gu, '')
		.replace(/ß/g, 'ss')
		.replace(/[æÆ]/g, 'ae')
		.replace(/[øØ]/g, 'o')
		.toLowerCase()
		.replace(/[^a-z0-9]+/g, '-')
		.slice(0, MOST_SIGNS)
		.replace(/^-+|-+$/g, '');
}
