import { contentDir, getStore } from '$lib/server/getStore';
import { specimenHealth } from '$lib/server/specimenHealth';
import { staffOnly } from '$lib/server/staffOnly';
import type { PageServerLoad } from './$types';

/** The state of the exhibit at a glance; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const store = getStore();
	const problems = store.problems();
	const errors = problems.filter(({ severity }) => severity === 'error').length;
	return {
		specimens: await specimenHealth(
			store,
			contentDir(),
			event.url.searchParams.get('lang') ?? '',
			Date.now(),
		),
		errors,
		warnings: problems.length - errors,
	};
};
