import { getStore } from '$lib/server/getStore';
import { viewFor } from '$lib/server/viewFor';
import type { LayoutServerLoad } from './$types';

/** Beginnings of words that are said in one place only. */
const ONLY_IN: { prefix: string; at: string; or?: string }[] = [
	{ prefix: 'desk_', at: '/desk' },
	{ prefix: 'quiz_', at: '/quiz', or: '/desk/quiz' },
	{ prefix: 'feed_', at: '/feeding' },
	{ prefix: 'repl_', at: '/replacement' },
];

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
	// words that only one room needs are many: the others, and above all the start screen, do without them
	const elsewhere = ONLY_IN.filter(
		({ at, or }) => ![at, or ?? at].some((path) => url.pathname.startsWith(path)),
	);
	const words = Object.entries(ui).filter(
		([key]) => !key.startsWith('attract_') && !elsewhere.some(({ prefix }) => key.startsWith(prefix)),
	);
	return { frame: { ...rest, ui: Object.fromEntries(words) }, preparing: null };
};
