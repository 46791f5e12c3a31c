import { CERTAINTIES, PARTS, PRESERVATIONS } from '$lib/content/exhibit';
import type { DeskFile, LabelFields } from '$lib/content/specimenDesk';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { getStore } from '$lib/server/getStore';
import { scanLines } from '$lib/server/newSpecimen/replaceScan';
import { NO_LABEL, readFacts, readLabelFields } from '$lib/server/specimenDesk/readFields';
import { staffOnly } from '$lib/server/staffOnly';
import { pick } from '$lib/server/viewFor';
import { ID_PATTERN } from '$lib/content/schemas';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

/** A specimen's files as they are now, in fields, and what may be chosen; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const { id } = event.params;
	// drafts and those out of their time too
	const exhibit = getStore().everything();
	if (!exhibit || !ID_PATTERN.test(id)) error(404, 'Not found');
	const languages = exhibit.languages.map(({ code }) => code);
	const [factsFile, ...labelFiles] = await Promise.all(
		[`specimens/${id}/specimen.yaml`, ...languages.map((code) => `specimens/${id}/label.${code}.md`)].map(
			readDesk,
		),
	);
	if (factsFile.exact === null && labelFiles.every(({ exact }) => exact === null)) error(404, 'Not found');
	const facts = factsFile.exact === null ? null : readFacts(factsFile.exact);
	const labels: Record<string, LabelFields> = {};
	/** languages whose label is there but cannot be taken apart */
	const unreadable: string[] = [];
	languages.forEach((code, i) => {
		const { exact } = labelFiles[i];
		const read = exact === null ? NO_LABEL : readLabelFields(exact);
		if (!read) unreadable.push(code);
		const ids = [...new Set([...(facts?.features ?? []), ...Object.keys(read?.features ?? {})])];
		labels[code] = {
			...(read ?? NO_LABEL),
			features: Object.fromEntries(ids.map((feature) => [feature, read?.features[feature] ?? ''])),
		};
	});
	const lang = event.url.searchParams.get('lang') ?? '';
	const first = languages[0];
	const named = ({ id: name, text }: { id: string; text: Record<string, { name: string }> }) => ({
		id: name,
		name: pick(text, lang, first)?.value.name ?? name,
	});
	return {
		id,
		fields: { files: [factsFile, ...labelFiles], facts: facts?.fields ?? null, labels },
		missing: languages.filter((_, i) => labelFiles[i].exact === null),
		unreadable,
		isScan: factsFile.exact !== null && scanLines(factsFile.exact) !== null,
		shown: exhibit.specimens.some((one) => one.id === id),
		choices: {
			group: exhibit.groups.map(named),
			bed: exhibit.beds.map(named),
			sources: exhibit.sources.map(({ id: source, citation, tag }) => ({ id: source, citation, tag })),
			part: [...PARTS],
			preservation: [...PRESERVATIONS],
			certainty: [...CERTAINTIES],
		},
	};
};

async function readDesk(path: string): Promise<DeskFile> {
	const opened = await getDeskFiles().open(path);
	return opened.ok
		? { path, base: opened.value.base, exact: opened.value.exact }
		: { path, base: null, exact: null };
}
