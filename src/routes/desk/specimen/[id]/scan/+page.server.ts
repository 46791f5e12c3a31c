import { readYaml } from '$lib/content/readYaml';
import { ID_PATTERN } from '$lib/content/schemas';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { scanLines } from '$lib/server/newSpecimen/replaceScan';
import { readFacts } from '$lib/server/specimenDesk/readFields';
import { staffOnly } from '$lib/server/staffOnly';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

/** What a specimen's file says of its scan; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	const { id } = event.params;
	if (!ID_PATTERN.test(id)) error(404, 'Not found');
	const opened = await getDeskFiles().open(`specimens/${id}/specimen.yaml`);
	const scan = opened.ok ? scanLines(opened.value.exact) : null;
	if (!opened.ok || !scan) error(404, 'Not found');
	return {
		id,
		accession: readFacts(opened.value.exact)?.fields.accession || id,
		file: typeof scan.file === 'string' ? scan.file : '',
		marked: scan.crown !== undefined,
		cardHeight_mm: cardHeight(opened.value.text),
	};
};

/** What the card in the drawer says, mm; null where it says nothing. */
function cardHeight(facts: string): number | null {
	const value = readYaml(facts).value as { declared?: { crown_height_mm?: unknown } | null } | null;
	const height = value?.declared?.crown_height_mm;
	return typeof height === 'number' && height > 0 ? height : null;
}
