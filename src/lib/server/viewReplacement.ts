import type { Exhibit, Source } from '../content/exhibit';
import { PARTS } from '../content/exhibit';
import type { EntryText, Quantity, ReplacementContent, ReplacementTable } from '../content/replacement/types';
import type { DrawerShare, EntryWords, NumberView, ReplacementView } from '../content/replacement/view';
import { citations } from './citations';
import { pick } from './viewFor';
import { pictureUrl } from './shapeFiles';

/** The replacement room's content in one language; null when the exhibit has none. Languages as in viewFor. */
export function viewReplacement(exhibit: Exhibit, lang: string): ReplacementView | null {
	const content = exhibit.replacement;
	if (!content) return null;
	const first = exhibit.languages[0]?.code ?? 'en';
	const chosen = exhibit.languages.some(({ code }) => code === lang) ? lang : first;
	const sources = new Map(exhibit.sources.map((source) => [source.id, source]));
	const show = (table: ReplacementTable): unknown[] =>
		content[table].map((entry) => entryView(entry, sources, chosen, first));
	const tables = Object.fromEntries(
		(Object.keys(content) as ReplacementTable[]).map((table) => [table, show(table)]),
	) as unknown as Omit<ReplacementView, 'drawer'>;
	return { ...tables, drawer: drawer(exhibit, chosen, first) };
}

type AnyEntry = ReplacementContent[ReplacementTable][number];

function entryView(
	{ sources: works, text, ...facts }: AnyEntry,
	sources: ReadonlyMap<string, Source>,
	lang: string,
	first: string,
): object {
	const found = pick<EntryText>(text, lang, first);
	const named: string[] = [];
	const number = (value: Quantity): NumberView | undefined => {
		const [source] = citations([value.source], sources);
		if (!source) return undefined;
		named.push(value.source);
		return { from: value.from, to: value.to, mark: value.tag === 'seen' ? null : value.tag, source };
	};
	const shown = Object.entries(facts).map(([key, value]): [string, unknown] => {
		if (isQuantity(value)) return [key, number(value)];
		const days: unknown = (value as { days?: unknown } | null)?.days;
		return isQuantity(days) ? [key, { ...(value as object), days: number(days) }] : [key, value];
	});
	const words: EntryWords = {
		name: found?.value.name ?? facts.id,
		line: found?.value.line ?? '',
		more: found?.value.more ?? null,
		textLang: found?.lang ?? first,
		sourceCitations: citations([...works, ...named], sources),
	};
	return { ...Object.fromEntries(shown), ...words };
}

const isQuantity = (value: unknown): value is Quantity =>
	typeof value === 'object' && value !== null && 'source' in value && 'tag' in value && 'from' in value;

/** What the drawer holds, counted from the specimens. */
function drawer(exhibit: Exhibit, lang: string, first: string): DrawerShare[] {
	return PARTS.map((part) => {
		const teeth = exhibit.specimens.filter((specimen) => specimen.part === part);
		return {
			part,
			count: teeth.length,
			teeth: teeth.map(({ id, accession, prepared, preservation, text }) => ({
				id,
				accession,
				title: pick(text, lang, first)?.value.title ?? accession,
				pictureUrl: pictureUrl(prepared.hash, preservation),
			})),
		};
	});
}
