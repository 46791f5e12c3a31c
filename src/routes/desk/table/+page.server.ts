import { getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { tableColumns } from '$lib/server/table/columns';
import type { PageServerLoad } from './$types';

/** The columns that a table of specimens can have; for staff only. */
export const load: PageServerLoad = (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const languages =
		getStore()
			.current()
			?.languages.map(({ code }) => code) ?? [];
	return { columns: tableColumns(languages).map(({ key }) => key) };
};
