import { attractAsks } from '$lib/server/attractAsks';
import { askedLanguage } from '$lib/server/askedLanguage';
import { getStore } from '$lib/server/getStore';
import { viewFor } from '$lib/server/viewFor';
import type { PageServerLoad } from './$types';

/** How many teeth lie on the start screen. */
const ON_SHOW = 9;

export const load: PageServerLoad = ({ url, locals, depends }) => {
	depends('exhibit:now');
	const exhibit = getStore().current();
	if (!exhibit) return { teeth: [], asks: [] };
	const { specimens } = viewFor(exhibit, askedLanguage(url) ?? locals.firstLang);
	// spread over the drawer, so that the row shows many kinds
	const step = Math.max(1, specimens.length / ON_SHOW);
	const teeth = [];
	for (let i = 0; i < specimens.length && teeth.length < ON_SHOW; i += step) {
		const { id, title, shape } = specimens[Math.floor(i)];
		teeth.push({ id, title, shape });
	}
	return { teeth, asks: attractAsks(exhibit) };
};
