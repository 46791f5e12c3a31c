import type { ContentReader } from '../../content/draft';
import type { Exhibit } from '../../content/exhibit';
import { labelCounts } from '../../content/labelCounts';
import { loadContent, type ContentCache } from '../../content/loadContent';
import type { TryAnswer, TryRequest } from '../../content/specimenDesk';
import type { SpecimenView } from '../../content/view';
import { contentWith } from '../contentWith';
import { pictureUrl } from '../shapeFiles';
import { viewFor } from '../viewFor';
import { wordedProblems } from '../wordedProblems';
import { applyEdits } from './applyEdits';
import { readLabelFields } from './readFields';

/** What a specimen's files would be with what was typed, what the content check says of them, and how the room shows it. */
export async function tryEdits(
	id: string,
	request: TryRequest,
	exhibit: Exhibit,
	reader: ContentReader,
	cache: ContentCache,
	/** language of the problems' words */
	pageLang: string,
): Promise<TryAnswer> {
	const applied = applyEdits(request.files, request.edits);
	const changes = applied.ok ? applied.value : [];
	const planned = new Map(
		changes.flatMap((change): [string, string][] =>
			'text' in change && change.text !== null ? [[change.path, change.text]] : [],
		),
	);
	const { draft, problems } = await loadContent(contentWith(reader, planned), cache);
	const words = request.files.flatMap(({ path, exact }) => {
		const language = /\/label\.([^./]+)\.md$/.exec(path)?.[1];
		const text = planned.get(path) ?? exact;
		return language && text !== null ? [[language, readLabelFields(text)?.text ?? ''] as const] : [];
	});
	return {
		changes,
		problems: wordedProblems(
			problems.filter(({ file }) => file.startsWith(`specimens/${id}/`)),
			pageLang,
		),
		view: draft ? viewOf(id, { ...exhibit, ...draft }, exhibit, draft.specimens, request.lang) : null,
		counts: Object.fromEntries(words.map(([language, text]) => [language, labelCounts(text, language)])),
		notEditable: applied.ok ? null : applied.problem.path,
	};
}

/** null where its files have errors, or its shape is not prepared */
function viewOf(
	id: string,
	texts: Omit<Exhibit, 'specimens'>,
	exhibit: Exhibit,
	drafts: NonNullable<Awaited<ReturnType<typeof loadContent>>['draft']>['specimens'],
	lang: string,
): SpecimenView | null {
	const specimen = drafts.find((one) => one.id === id);
	const shown = exhibit.specimens.find((one) => one.id === id);
	if (!specimen || !shown) return null;
	const [view] = viewFor(
		{ ...texts, specimens: [{ ...specimen, prepared: shown.prepared }] },
		lang,
	).specimens;
	// a picture in another colour is made only once it is saved
	return {
		...view,
		shape: { ...view.shape, pictureUrl: pictureUrl(shown.prepared.hash, shown.preservation) },
	};
}
