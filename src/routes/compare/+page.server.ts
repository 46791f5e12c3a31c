import { askedLanguage } from '$lib/server/askedLanguage';
import { getStore } from '$lib/server/getStore';
import { mainUses } from '$lib/server/mainUses';
import { viewFor } from '$lib/server/viewFor';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = ({ url, locals, depends }) => {
	depends('exhibit:now');
	const exhibit = getStore().current();
	if (!exhibit) return { specimens: [], uses: {} };
	if (!exhibit.rooms.includes('compare')) error(404, 'This room is closed.');
	const { specimens } = viewFor(exhibit, askedLanguage(url) ?? locals.firstLang);
	return { specimens, uses: mainUses(specimens, exhibit.feeding) };
};
