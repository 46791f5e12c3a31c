import { getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { wordedProblems } from '$lib/server/wordedProblems';
import type { PageServerLoad } from './$types';

/** Everything that a curator should know about the files now; `of` asks for those below one path only. */
export const load: PageServerLoad = (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const of = event.url.searchParams.get('of') ?? '';
	const all = getStore().problems();
	const found = all.filter(({ file }) => file.startsWith(of));
	const lang = event.url.searchParams.get('lang') ?? '';
	return { of, problems: wordedProblems(found, lang), all: all.length };
};
