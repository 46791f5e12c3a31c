import { getStore } from '$lib/server/getStore';
import { pictureUrl } from '$lib/server/shapeFiles';
import { staffOnly } from '$lib/server/staffOnly';
import { viewFor } from '$lib/server/viewFor';
import type { PageServerLoad } from './$types';

/** Every specimen that is shown, and those that a mistake keeps from being shown; for staff only. */
export const load: PageServerLoad = (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const store = getStore();
	const exhibit = store.current();
	const marked = new Map(exhibit?.specimens.map(({ id, shape }) => [id, shape]));
	const shown = exhibit ? viewFor(exhibit, event.url.searchParams.get('lang') ?? '').specimens : [];
	const errors = new Map<string, number>();
	for (const { severity, file } of store.problems()) {
		const id = /^specimens\/([^/]+)\//.exec(file)?.[1];
		if (severity === 'error' && id) errors.set(id, (errors.get(id) ?? 0) + 1);
	}
	const known = new Set(shown.map(({ id }) => id));
	return {
		specimens: shown.map(({ id, title, accession, kind, features, shape }) => {
			const source = marked.get(id);
			return {
				id,
				title,
				accession,
				kind,
				features: features.length,
				pictureUrl: shape.pictureUrl,
				crownMarked: source?.kind === 'scan' && source.crown !== undefined,
				errors: errors.get(id) ?? 0,
			};
		}),
		/** folders that could not be used yet */
		unusable: [...errors]
			.filter(([id]) => !known.has(id))
			.map(([id, count]) => {
				const toMark = store.provisional(id);
				const picture = toMark && pictureUrl(toMark.shape.hash, toMark.specimen.preservation);
				return { id, count, toMark: toMark && { accession: toMark.specimen.accession, pictureUrl: picture } };
			}),
	};
};
