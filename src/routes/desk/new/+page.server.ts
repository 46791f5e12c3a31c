import { CERTAINTIES, PARTS, PRESERVATIONS } from '$lib/content/exhibit';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { pick } from '$lib/server/viewFor';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

/** What a new specimen may be made of: groups, beds, works, forms to begin with, and names that are taken; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const exhibit = getStore().everything();
	if (!exhibit) error(503, 'The exhibit is not ready yet');
	const lang = event.url.searchParams.get('lang') ?? '';
	const first = exhibit.languages[0].code;
	const named = ({ id, text }: { id: string; text: Record<string, { name: string }> }) => ({
		id,
		name: pick(text, lang, first)?.value.name ?? id,
	});
	const folders = (await getDeskFiles().list()).flatMap(
		({ path }) => /^specimens\/([^/]+)\//.exec(path)?.[1] ?? [],
	);
	return {
		first: exhibit.languages[0],
		others: exhibit.languages.slice(1).map(({ name }) => name),
		museum: exhibit.museum,
		taken: [...new Set(folders.map((name) => name.toLowerCase()))],
		accessions: exhibit.specimens.map(({ accession }) => accession),
		forms: exhibit.specimens.flatMap(({ id, accession, text, shape, preservation }) =>
			shape.kind === 'model'
				? [
						{
							id,
							accession,
							title: pick(text, lang, first)?.value.title ?? accession,
							form: shape.form,
							preservation,
						},
					]
				: [],
		),
		choices: {
			group: exhibit.groups.map(named),
			bed: exhibit.beds.map(named),
			sources: exhibit.sources.map(({ id, citation, tag }) => ({ id, citation, tag })),
			part: [...PARTS],
			preservation: [...PRESERVATIONS],
			certainty: [...CERTAINTIES],
		},
	};
};
