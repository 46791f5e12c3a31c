import { getStore } from '$lib/server/getStore';
import { languageGaps } from '$lib/server/languageGaps';
import { staffOnly } from '$lib/server/staffOnly';
import type { PageServerLoad } from './$types';

/** Missing lines that are listed of one file; the rest is counted. */
const MOST_LISTED = 40;

/** How complete each language is, and what it lacks; for staff only. */
export const load: PageServerLoad = (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const exhibit = getStore().current();
	if (!exhibit) return { first: null, languages: [] };
	const [first, ...others] = exhibit.languages;
	return {
		first,
		languages: others.map(({ code, name }) => {
			const files = languageGaps(exhibit, code);
			const lines = files.reduce((sum, file) => sum + file.lines, 0);
			const missing = files.reduce((sum, file) => sum + file.missing.length, 0);
			return {
				code,
				name,
				lines,
				missing,
				files: files
					.filter((file) => file.missing.length > 0)
					.map((file) => ({
						file: file.file,
						from: file.file.replace(new RegExp(`\\b${code}\\.(yaml|md|mp3)$`), `${first.code}.$1`),
						lines: file.lines,
						missing: file.missing.length,
						listed: file.missing.slice(0, MOST_LISTED),
					})),
			};
		}),
	};
};
