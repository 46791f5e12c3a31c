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
		...frame
	} = viewFor(exhibit, url.searchParams.get('lang') ?? '');
	return { frame, preparing: null };
};
