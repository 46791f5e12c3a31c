import { askedLanguage } from '$lib/server/askedLanguage';
import { getStore } from '$lib/server/getStore';
import { mainUses } from '$lib/server/mainUses';
import { isStaff } from '$lib/server/staffOnly';
import { viewFor } from '$lib/server/viewFor';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = (event) => {
	const { url, locals, depends } = event;
	depends('exhibit:now');
	// in the desk's preview drafts lie in the drawer too
	const inDesk = url.searchParams.has('preview') && isStaff(event);
	const exhibit = inDesk ? getStore().everything() : getStore().current();
	if (!exhibit) return { specimens: [], uses: {} };
	if (!exhibit.rooms.includes('compare')) error(404, 'This room is closed.');
	const { specimens } = viewFor(exhibit, askedLanguage(url) ?? locals.firstLang);
	return { specimens, uses: mainUses(specimens, exhibit.feeding) };
};
