import { stat } from 'node:fs/promises';
import type { Exhibit, Specimen } from '../content/exhibit';
import type { Problem } from '../content/problem';
import { dayIn } from '../content/shown/isShown';
import type { LanguageHealth, SpecimenHealth } from '../content/specimenHealth';
import { fsReader, pathInside } from './fsReader';
import type { ExhibitStore } from './exhibitStore';
import { pictureUrl } from './shapeFiles';
import { pick } from './viewFor';

/** Found in a label that can be used, but leaves something out in its language. */
const LEAVES_OUT = new Set(['feature-not-translated', 'alt-missing', 'alt-repeats-title']);

/** How complete the files of every specimen are: those that are shown in the exhibit's order, then the others. */
export async function specimenHealth(
	store: Pick<ExhibitStore, 'everything' | 'problems' | 'provisional'>,
	contentDir: string,
	lang: string,
	now: number,
): Promise<SpecimenHealth[]> {
	const exhibit = store.everything();
	if (!exhibit) return [];
	const paths = new Set((await fsReader(contentDir).list()).map(({ path }) => path));
	const found = new Map<string, Problem[]>();
	for (const problem of store.problems()) {
		const id = /^specimens\/([^/]+)\//.exec(problem.file)?.[1];
		if (id) found.set(id, [...(found.get(id) ?? []), problem]);
	}
	const today = dayIn(exhibit.timeZone, now);
	const shown = await Promise.all(
		exhibit.specimens.map((specimen) =>
			healthOf(specimen, exhibit, found.get(specimen.id) ?? [], paths, contentDir, lang, today),
		),
	);
	const known = new Set(exhibit.specimens.map(({ id }) => id));
	const folders = [...paths].flatMap((path) => /^specimens\/([^/]+)\//.exec(path)?.[1] ?? []);
	const others = [...new Set([...folders, ...found.keys()])].filter((id) => !known.has(id)).sort();
	return [...shown, ...others.map((id) => withoutShape(id, store, exhibit, found.get(id) ?? [], paths))];
}

async function healthOf(
	specimen: Specimen,
	exhibit: Exhibit,
	problems: readonly Problem[],
	paths: ReadonlySet<string>,
	contentDir: string,
	lang: string,
	today: string,
): Promise<SpecimenHealth> {
	const { id, shape, prepared, sources } = specimen;
	const first = exhibit.languages[0]?.code ?? 'en';
	const tags = new Map(exhibit.sources.map((source) => [source.id, source.tag]));
	const named = [...new Set([...sources, ...(shape.kind === 'model' ? shape.basedOn : [])])];
	const { errors, warnings } = countOf(problems);
	return {
		id,
		accession: specimen.accession,
		title: pick(specimen.text, lang, first)?.value.title ?? '',
		pictureUrl: pictureUrl(prepared.hash, specimen.preservation),
		languages: languagesOf(id, exhibit, problems, paths),
		shape: shape.kind === 'model' ? 'model' : shape.crown ? 'marked' : 'scan',
		sources: named.length,
		recalled: named.filter((source) => tags.get(source) === 'memory').length,
		licence: specimen.licence,
		triangles: prepared.triangles,
		scan_MB: shape.kind === 'model' ? null : await sizeOf_MB(contentDir, `specimens/${id}/${shape.file}`),
		features: specimen.features.length,
		...stateOf(specimen, errors, today),
		errors,
		warnings,
	};
}

/** A specimen that visitors do not see: what its folder alone tells. */
function withoutShape(
	id: string,
	store: Pick<ExhibitStore, 'provisional'>,
	exhibit: Exhibit,
	problems: readonly Problem[],
	paths: ReadonlySet<string>,
): SpecimenHealth {
	const toMark = store.provisional(id);
	return {
		id,
		accession: toMark?.specimen.accession ?? '',
		title: toMark ? (Object.values(toMark.specimen.text)[0]?.title ?? '') : '',
		pictureUrl: toMark ? pictureUrl(toMark.shape.hash, toMark.specimen.preservation) : null,
		languages: languagesOf(id, exhibit, problems, paths),
		shape: toMark ? 'unmarked' : 'none',
		sources: toMark?.specimen.sources.length ?? 0,
		recalled: 0,
		licence: toMark?.specimen.licence ?? null,
		triangles: toMark?.shape.triangles ?? null,
		scan_MB: null,
		features: toMark?.specimen.features.length ?? 0,
		state: 'broken',
		day: null,
		...countOf(problems),
	};
}

function languagesOf(
	id: string,
	exhibit: Exhibit,
	problems: readonly Problem[],
	paths: ReadonlySet<string>,
): LanguageHealth[] {
	return exhibit.languages.map(({ code }) => {
		const path = `specimens/${id}/label.${code}.md`;
		const here = problems.filter(({ file }) => file === path);
		const words = !paths.has(path)
			? 'missing'
			: here.some(({ severity }) => severity === 'error')
				? 'broken'
				: here.some((problem) => LEAVES_OUT.has(problem.id))
					? 'partly'
					: 'whole';
		return { code, words, sound: paths.has(`specimens/${id}/label.${code}.mp3`) };
	});
}

function stateOf(
	{ status, show }: Specimen,
	errors: number,
	today: string,
): Pick<SpecimenHealth, 'state' | 'day'> {
	if (status === 'draft') return { state: 'draft', day: null };
	if (show?.from !== undefined && today < show.from) return { state: 'later', day: show.from };
	if (show?.until !== undefined && show.until < today) return { state: 'over', day: show.until };
	if (errors > 0) return { state: 'older', day: null };
	return show?.until === undefined ? { state: 'shown', day: null } : { state: 'until', day: show.until };
}

const countOf = (problems: readonly Problem[]): { errors: number; warnings: number } => {
	const errors = problems.filter(({ severity }) => severity === 'error').length;
	return { errors, warnings: problems.length - errors };
};

async function sizeOf_MB(contentDir: string, path: string): Promise<number | null> {
	try {
		return (await stat(await pathInside(contentDir, path))).size / 1e6;
	} catch {
		return null; // gone since it was read
	}
}
