import { KEEP_DAYS } from '$lib/content/exhibit';
import { getCounts } from '$lib/server/counts/getCounts';
import { USE_PERIODS, usePeriod } from '$lib/server/counts/usePeriod';
import { useReport } from '$lib/server/counts/useReport';
import { getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { viewFor } from '$lib/server/viewFor';
import type { PageServerLoad } from './$types';

/** How the exhibit was used; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const exhibit = getStore().current();
	const { days, from } = usePeriod(event.url.searchParams.get('days'), new Date());
	const counts = getCounts();
	const lang = event.url.searchParams.get('lang') ?? '';
	return {
		// a database that is away is told of, and not an error of this page
		report: counts ? await useReport(counts, from).catch(() => null) : null,
		period: days,
		periods: [...USE_PERIODS],
		specimens: exhibit
			? viewFor(exhibit, lang).specimens.map(({ id, title, shape }) => ({
					id,
					title,
					pictureUrl: shape.pictureUrl,
				}))
			: [],
		screens: (exhibit?.screens ?? []).map(({ id, title }) => ({ id, title })),
		counted: exhibit?.counts?.use !== false,
		keepDays: exhibit?.counts?.keepDays ?? KEEP_DAYS,
	};
};
