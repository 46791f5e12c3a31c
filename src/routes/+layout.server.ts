import { getStore } from '$lib/server/getStore';
import { viewFor } from '$lib/server/viewFor';
import type { LayoutServerLoad } from './$types';

/** What every page needs: the words, the languages, the screen. The teeth come with the rooms. */
export const load: LayoutServerLoad = ({ url, depends }) => {
	depends('exhibit:now');
	const store = getStore();
	const exhibit = store.current();
	if (!exhibit) return { frame: null, preparing: store.preparing() };
	const {
		specimens: _specimens,
		glossary: _glossary,
		feeding: _feeding,
		ui,
		...rest
	} = viewFor(exhibit, url.searchParams.get('lang') ?? '');
	// the desk's words are many, and no visitor reads them
	const forStaff = url.pathname.startsWith('/desk');
	const words = Object.entries(ui).filter(([key]) => forStaff || !key.startsWith('desk_'));
	return { frame: { ...rest, ui: Object.fromEntries(words) }, preparing: null };
};
