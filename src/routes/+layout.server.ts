import { shownOn } from '$lib/content/screens/shownOn';
import { askedLanguage } from '$lib/server/askedLanguage';
import { borrowedWords } from '$lib/server/borrowedWords';
import { exporting } from '$lib/server/exporting';
import { getStore } from '$lib/server/getStore';
import { isStaff } from '$lib/server/staffOnly';
import { viewFor } from '$lib/server/viewFor';
import type { LayoutServerLoad } from './$types';

/** Files lie in folders: an export asks for every page by the address of its folder. */
export const trailingSlash = exporting() ? 'ignore' : 'never';

/** Beginnings of words that are said in one place only. */
const ONLY_IN: { prefix: string; at: string; or?: string }[] = [
	{ prefix: 'desk_', at: '/desk', or: '/status' },
	{ prefix: 'status_', at: '/status' },
	{ prefix: 'iiif_', at: '/iiif' },
	{ prefix: 'quiz_', at: '/quiz', or: '/desk/quiz' },
	{ prefix: 'feed_', at: '/feeding', or: '/desk/use' },
	{ prefix: 'repl_', at: '/replacement', or: '/desk/use' },
	{ prefix: 'use_', at: '/desk/use' },
];

/** What every page needs: the words, the languages, the screen. The teeth come with the rooms. */
export const load: LayoutServerLoad = (event) => {
	const { url, route, locals, depends } = event;
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
	} = viewFor(exhibit, askedLanguage(url) ?? locals.firstLang);
	const shown = shownOn({ ...rest, screens: exhibit.screens }, locals.screen);
	// words that only one room needs are many: the others, and above all the start screen, do without them
	const elsewhere = ONLY_IN.filter(
		({ at, or }) => ![at, or ?? at].some((path) => route.id?.startsWith(path)),
	);
	// staff may look at the exhibit with marks on what is not translated yet
	const marks = url.searchParams.get('marks') === 'missing' && isStaff(event);
	const words = Object.entries(ui).filter(
		([key]) =>
			!key.startsWith('attract_') &&
			!key.startsWith('staff_') &&
			(marks || !key.startsWith('marks_')) &&
			!elsewhere.some(({ prefix }) => key.startsWith(prefix)),
	);
	const borrowed = borrowedWords(exhibit, rest.lang);
	const frame = { ...rest, ...shown, ui: Object.fromEntries(words), borrowed, marks, exported: exporting() };
	return { frame, preparing: null };
};
