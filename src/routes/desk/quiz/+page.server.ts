import { KEEP_DAYS } from '$lib/content/exhibit';
import { getCounts } from '$lib/server/counts/getCounts';
import { quizReport } from '$lib/server/counts/quizReport';
import { getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { viewFor } from '$lib/server/viewFor';
import { viewQuiz } from '$lib/server/viewQuiz';
import type { PageServerLoad } from './$types';

/** What the counts say of each question; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const exhibit = getStore().current();
	const counts = getCounts();
	const lang = event.url.searchParams.get('lang') ?? '';
	return {
		report: counts ? await quizReport(counts) : null,
		specimens: exhibit ? viewFor(exhibit, lang).specimens : [],
		quiz: exhibit ? viewQuiz(exhibit, lang) : null,
		keepDays: exhibit?.counts?.keepDays ?? KEEP_DAYS,
	};
};
