import type { ExhibitDraft, SpecimenDraft } from '../content/draft';
import type { ByLang, Exhibit, PreparedShape, Specimen } from '../content/exhibit';
import type { Problem } from '../content/problem';
import { canonicalJson } from './canonicalJson';
import { composeFeeding, feedingSources } from './composeFeeding';
import { sha256 } from './shapeHash';

/** Text of prepared shapes, by far the largest part of an exhibit; they never change. */
const shapeTexts = new WeakMap<object, string>();

/** Hash over everything in an exhibit but the hash itself. */
export function exhibitHash(exhibit: Omit<Exhibit, 'hash'>): string {
	for (const { prepared } of exhibit.specimens) {
		if (!shapeTexts.has(prepared)) shapeTexts.set(prepared, canonicalJson(prepared));
	}
	return sha256(canonicalJson({ ...exhibit, hash: undefined }, shapeTexts));
}

/**
 * Makes the exhibit out of what its files say now and of what was last good:
 * - a specimen without an error whose shape is prepared is taken as it is;
 * - one with an error, or whose shape is not to be had (yet), keeps its last good version, and is
 *   left out where there is none;
 * - words, groups, beds, sources and glossary entries lost to an error keep their last good version;
 * - what has been taken out of the folder without an error goes.
 */
export function composeExhibit(
	draft: ExhibitDraft,
	problems: readonly Problem[],
	last: Exhibit | null,
	preparedOf: (specimen: SpecimenDraft) => PreparedShape | null,
): Exhibit {
	const wrong = filesWithErrors(problems);
	const fresh: Specimen[] = [];
	const unprepared = new Set<string>();
	for (const specimen of draft.specimens) {
		const prepared = preparedOf(specimen);
		if (prepared) fresh.push({ ...specimen, prepared });
		else unprepared.add(specimen.id);
	}
	const lostSources = new Set(
		wrong.has('sources.yaml') ? missing(last?.sources ?? [], draft.sources).map(({ id }) => id) : [],
	);
	const keepGroup = (id: string): boolean => wrong.has(`groups/${id}`);
	const keepBed = (id: string): boolean => wrong.has(`beds/${id}`);
	const specimens = merge(
		fresh.map((specimen) => withSources(specimen, last?.specimens, lostSources)),
		last?.specimens ?? [],
		(old) =>
			unprepared.has(old.id) ||
			wrong.has(`specimens/${old.id}`) ||
			keepGroup(old.group) ||
			(old.bed !== undefined && keepBed(old.bed)),
	);

	const groupsInUse = new Set(specimens.map((specimen) => specimen.group));
	const bedsInUse = new Set(specimens.map((specimen) => specimen.bed));
	const groups = merge(
		draft.groups.map((group) => withSources(group, last?.groups, lostSources)),
		last?.groups ?? [],
		({ id }) => keepGroup(id) || groupsInUse.has(id),
	);
	const beds = merge(draft.beds, last?.beds ?? [], ({ id }) => keepBed(id) || bedsInUse.has(id));
	const replacement = replacementOf(draft, last, wrong);
	const feedingWrong =
		lostSources.size > 0 ||
		problems.some(({ severity, file }) => severity === 'error' && /^feeding\//.test(file));
	const feeding = composeFeeding(draft.feeding, last?.feeding, feedingWrong);
	const quiz = quizOf(draft, last, wrong);
	const screens = draft.screens && merge(draft.screens, last?.screens ?? [], () => wrong.has('screens.yaml'));
	const sourcesInUse = new Set(
		[...specimens, ...groups]
			.flatMap((item) => item.sources)
			.concat(specimens.flatMap(({ shape }) => (shape.kind === 'model' ? shape.basedOn : [])))
			.concat(sourcesOfReplacement(replacement))
			.concat(feedingSources(feeding))
			.concat([...(quiz?.claims ?? []), ...(quiz?.questions ?? [])].flatMap((entry) => entry.sources)),
	);

	const exhibit: Omit<Exhibit, 'hash'> = {
		...draft,
		specimens,
		groups,
		beds,
		sources: merge(
			draft.sources,
			last?.sources ?? [],
			({ id }) => lostSources.has(id) || sourcesInUse.has(id),
		),
		...(feeding ? { feeding } : {}),
		glossary: glossaryOf(draft, last, wrong),
		...(replacement ? { replacement } : {}),
		...(quiz ? { quiz } : {}),
		...(screens ? { screens } : {}),
		ui: uiOf(draft, last, wrong),
	};
	return { ...exhibit, hash: exhibitHash(exhibit) };
}

/** Which items have an error: `specimens/<id>`, `groups/<id>`, `ui/<language>`, `sources.yaml` and so on. */
function filesWithErrors(problems: readonly Problem[]): Set<string> {
	const wrong = new Set<string>();
	for (const { severity, file } of problems) {
		if (severity !== 'error') continue;
		const [folder, name] = file.split('/');
		wrong.add(
			name === undefined ? file : folder === 'specimens' ? `${folder}/${name}` : `${folder}/${stem(name)}`,
		);
	}
	return wrong;
}

const stem = (name: string): string => name.split('.')[0];

function missing<T extends { id: string }>(last: readonly T[], now: readonly T[]): T[] {
	const ids = new Set(now.map(({ id }) => id));
	return last.filter(({ id }) => !ids.has(id));
}

/** What is new, and in their old places those of the last that are missing and to be kept. */
function merge<T extends { id: string }>(
	now: readonly T[],
	last: readonly T[],
	keep: (old: T) => boolean,
): T[] {
	const merged = [...now];
	for (const old of missing(last, now)) {
		if (!keep(old)) continue;
		const before = new Set(last.slice(0, last.indexOf(old)).map(({ id }) => id));
		const at = merged.findLastIndex(({ id }) => before.has(id));
		merged.splice(at + 1, 0, old);
	}
	return merged;
}

/** Gives an item back the sources that it lost only because sources.yaml cannot be read now. */
function withSources<T extends { id: string; sources: string[] }>(
	item: T,
	last: readonly T[] | undefined,
	lost: ReadonlySet<string>,
): T {
	if (lost.size === 0) return item;
	const before = last?.find(({ id }) => id === item.id)?.sources.filter((id) => lost.has(id)) ?? [];
	return before.length === 0 ? item : { ...item, sources: [...new Set([...item.sources, ...before])] };
}

/** Entries of the replacement tables that are lost to an error keep their last good version. */
function replacementOf(
	draft: ExhibitDraft,
	last: Exhibit | null,
	wrong: ReadonlySet<string>,
): Exhibit['replacement'] {
	const [now, before] = [draft.replacement, last?.replacement];
	const first = draft.languages[0]?.code ?? '';
	const broken = (table: string): boolean =>
		['sources.yaml', `replacement/${table}`, `replacement/${first}`].some((name) => wrong.has(name));
	if (!before) return now;
	const tables = Object.keys(before) as (keyof typeof before)[];
	if (!now && !tables.some(broken)) return undefined;
	const kept = tables.map((table) => [
		table,
		merge<{ id: string }>(now?.[table] ?? [], before[table], () => broken(table)),
	]);
	return Object.fromEntries(kept) as Exhibit['replacement'];
}

/** Questions, claims and rounds that are lost to an error keep their last good version, and so do the settings. */
function quizOf(draft: ExhibitDraft, last: Exhibit | null, wrong: ReadonlySet<string>): Exhibit['quiz'] {
	const [now, before] = [draft.quiz, last?.quiz];
	if (!now || !before) return now;
	const first = draft.languages[0]?.code ?? '';
	const broken = (table: string): boolean =>
		['sources.yaml', `quiz/${table}`, `quiz/${first}`].some((name) => wrong.has(name));
	const settings = wrong.has('quiz/settings') ? before : now;
	return {
		off: settings.off,
		waitsFor_s: settings.waitsFor_s,
		claims: merge(now.claims, before.claims, () => broken('claims')),
		questions: merge(now.questions, before.questions, () => broken('questions')),
		rounds: merge(now.rounds, before.rounds, () => broken('rounds')),
	};
}

/** Every work that the replacement tables name. */
function sourcesOfReplacement(replacement: Exhibit['replacement']): string[] {
	const entries = Object.values(replacement ?? {}).flat() as { sources: string[] }[];
	return entries.flatMap((entry) => {
		const numbers = Object.values(entry) as ({ source?: string; days?: { source: string } } | undefined)[];
		const named = numbers.flatMap((value) => [value?.source, value?.days?.source]);
		return [...entry.sources, ...named.filter((id) => id !== undefined)];
	});
}

function uiOf(draft: ExhibitDraft, last: Exhibit | null, wrong: ReadonlySet<string>): Exhibit['ui'] {
	const ui: Record<string, Readonly<Record<string, string>>> = { ...draft.ui };
	for (const { code } of draft.languages) {
		const before = last?.ui[code];
		if (before && wrong.has(`ui/${code}`)) ui[code] = { ...before, ...ui[code] };
	}
	return ui;
}

function glossaryOf(
	draft: ExhibitDraft,
	last: Exhibit | null,
	wrong: ReadonlySet<string>,
): Exhibit['glossary'] {
	const broken = draft.languages.map(({ code }) => code).filter((code) => wrong.has(`glossary/${code}`));
	if (!last || broken.length === 0) return draft.glossary;
	const entries = merge(draft.glossary, last.glossary, ({ text }) => broken.some((code) => text[code]));
	return entries.map((entry) => {
		const before: ByLang<{ term: string; meaning: string }> =
			last.glossary.find(({ id }) => id === entry.id)?.text ?? {};
		const text = { ...entry.text };
		for (const code of broken) if (!text[code] && before[code]) text[code] = before[code];
		return { ...entry, text };
	});
}
