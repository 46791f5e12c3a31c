import { contentDir, getStore } from '$lib/server/getStore';
import { readForMarking } from '$lib/server/marking';
import { staffOnly } from '$lib/server/staffOnly';
import { viewFor } from '$lib/server/viewFor';
import { error } from '@sveltejs/kit';
import type { Specimen } from '$lib/content/exhibit';
import type { CrownMarks } from '$lib/domain/measure/crownMeasures';
import type { PageServerLoad } from './$types';

/** The specimen's file as it is now, and its shape as it is shown; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const { id } = event.params;
	const read = await readForMarking(contentDir(), id);
	if (!read.ok && read.problem.code === 'no-such-specimen') error(404, 'Not found');
	const store = getStore();
	const exhibit = store.current();
	const specimen = exhibit?.specimens.find((one) => one.id === id);
	const lang = event.url.searchParams.get('lang') ?? '';
	const found = store
		.problems()
		.filter(({ severity, file }) => severity === 'error' && file.startsWith(`specimens/${id}/`))
		.map(({ file, line, message, remedy }) => ({ place: `${file}:${line}`, message, remedy }));
	return {
		id,
		marking: read.ok ? read.value : null,
		/** what keeps the files from being used, first thing first */
		problems:
			read.ok || found.length
				? found
				: [{ place: `specimens/${id}`, message: read.problem.message, remedy: read.problem.remedy }],
		specimen: (exhibit && viewFor(exhibit, lang).specimens.find((one) => one.id === id)) ?? null,
		fileFrame: specimen?.prepared.fileFrame ?? null,
		/** the exhibit shows the crown that the file marks */
		upToDate: sameCrown(specimen, read.ok ? read.value.crown : null),
		labial: specimen?.prepared.labial ?? ('+z' as const),
		preparing: store.preparing(),
	};
};

function sameCrown(specimen: Specimen | undefined, marked: CrownMarks | null): boolean {
	if (!specimen) return false;
	const shown = specimen.shape.kind === 'scan' ? specimen.shape.crown : undefined;
	const points = (marks: CrownMarks | null) =>
		marks && [marks.apex, marks.baseMesial, marks.baseDistal, marks.labial ?? null];
	return JSON.stringify(points(shown ?? null)) === JSON.stringify(points(marked));
}
