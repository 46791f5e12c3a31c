import { askedLanguage } from '$lib/server/askedLanguage';
import { getStore } from '$lib/server/getStore';
import { viewFor } from '$lib/server/viewFor';
import { viewQuiz } from '$lib/server/viewQuiz';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url, locals, depends }) => {
	depends('exhibit:now');
	const exhibit = getStore().current();
	if (!exhibit) return { specimens: [], quiz: null };
	if (!exhibit.rooms.includes('quiz')) error(404, 'This room is closed.');
	const lang = askedLanguage(url) ?? locals.firstLang;
	return {
		specimens: viewFor(exhibit, lang).specimens,
		quiz: viewQuiz(exhibit, lang),
	};
};
