import { wordedIn, wordProblem } from '$lib/content/wordProblem';
import { chooseLanguage } from '$lib/server/chooseLanguage';
import { wordDesk } from '$lib/server/deskProblem';
import { contentDir, getStore } from '$lib/server/getStore';
import { readForMarking } from '$lib/server/marking';
import type { ExhibitStore } from '$lib/server/exhibitStore';
import { staffOnly } from '$lib/server/staffOnly';
import { provisionalView, viewFor } from '$lib/server/viewFor';
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
	const lang = event.url.searchParams.get('lang') ?? '';
	// a scan that needs marks comes before an older version of it that visitors may still see
	const toMark = store.provisional(id);
	const specimen = exhibit?.specimens.find((one) => one.id === id);
	const spoken = chooseLanguage(exhibit, event.url.searchParams.get('lang'));
	const found = store
		.problems()
		.filter(({ severity, file }) => severity === 'error' && file.startsWith(`specimens/${id}/`))
		.map((problem) => ({ place: `${problem.file}:${problem.line}`, ...wordProblem(problem, spoken) }));
	return {
		id,
		marking: read.ok ? read.value : null,
		/** language of the words of `problems` */
		wordedIn: wordedIn(spoken),
		/** what keeps the files from being used, first thing first */
		problems:
			read.ok || found.length ? found : [{ place: `specimens/${id}`, ...wordDesk(read.problem, spoken) }],
		specimen: toMark
			? unmeasured(toMark, lang)
			: ((exhibit && viewFor(exhibit, lang).specimens.find((one) => one.id === id)) ?? null),
		/** it cannot be measured before its crown is marked */
		needsMarks: toMark !== null,
		fileFrame: toMark ? toMark.shape.fileFrame : (specimen?.prepared.fileFrame ?? null),
		/** the exhibit shows the crown that the file marks */
		upToDate: toMark === null && sameCrown(specimen, read.ok ? read.value.crown : null),
		labial: (!toMark && specimen?.prepared.labial) || ('+z' as const),
		preparing: store.preparing(),
	};
};

type ToMark = NonNullable<ReturnType<ExhibitStore['provisional']>>;

/** What the page shows of a scan that has no measures yet. */
function unmeasured({ specimen, shape }: ToMark, lang: string) {
	const text = specimen.text[lang] ?? Object.values(specimen.text)[0];
	return {
		accession: specimen.accession,
		title: text?.title ?? specimen.accession,
		shape: provisionalView(shape, specimen.preservation),
		measures: null,
	};
}

function sameCrown(specimen: Specimen | undefined, marked: CrownMarks | null): boolean {
	if (!specimen) return false;
	const shown = specimen.shape.kind === 'scan' ? specimen.shape.crown : undefined;
	const points = (marks: CrownMarks | null) =>
		marks && [marks.apex, marks.baseMesial, marks.baseDistal, marks.labial ?? null];
	return JSON.stringify(points(shown ?? null)) === JSON.stringify(points(marked));
}
