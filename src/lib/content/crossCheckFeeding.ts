import type { CompiledFeeding, WithSources } from './compileFeeding';
import { report, type ContentFiles, type KnownFile } from './contentFiles';
import { keepSources, type Items } from './crossCheckItems';
import type { Language } from './crossCheckWords';
import { placeOf } from './explainIssue';
import type { Feeding, FeedingWords, Jaw, Prey } from './feedingContent';
import { fieldPath } from './fieldPath';
import { FEEDING_PARTS, type FeedingPart } from './fileKind';
import { FILE_START } from './finding';
import type { FeedingLoss } from './messages/codes';
import { suggest } from './suggest';

/** What cannot be shown without a table. */
const WITHOUT = {
	thresholds: 'room',
	crown: 'room',
	materials: 'prey',
	guilds: 'guilds',
	ridges: 'ridges',
	everyday: 'everyday',
} as const satisfies Readonly<Record<FeedingPart, FeedingLoss>>;

/**
 * The folder `feeding/` put together: materials of prey, sources and words against each other. Whatever is wrong with one
 * thing leaves out that one; undefined when there is no such folder, or when what all rests on is missing.
 */
export function crossCheckFeeding(
	files: ContentFiles,
	languages: readonly Language[],
	items: Items,
	asked: boolean,
): Feeding | undefined {
	const all = [...files.byPath].filter(([path]) => path.startsWith('feeding/'));
	if (!asked && !all.some(([, { kind }]) => kind.kind !== 'stray' && kind.kind !== 'ignored'))
		return undefined;
	const part = (name: FeedingPart): [string, CompiledFeeding | undefined] => {
		const path = `feeding/${name}.yaml`;
		return [path, files.byPath.get(path)?.compiled?.feeding];
	};
	for (const name of FEEDING_PARTS) {
		const path = `feeding/${name}.yaml`;
		if (!files.byPath.has(path) && !files.meant.has(path))
			report(files, path, 'feeding-part-missing', FILE_START, '', { file: path, without: WITHOUT[name] });
	}
	const kept = <T>([path]: [string, unknown], thing: WithSources<T> | undefined): T | undefined => {
		if (!thing) return undefined;
		unmarked(files, items, path, thing);
		return keepSources(files, items, path, thing.references) ? thing.value : undefined;
	};
	const list = <T>(name: FeedingPart, read: (c: CompiledFeeding) => WithSources<T>[] | undefined): T[] => {
		const [path, compiled] = part(name);
		return (compiled ? (read(compiled) ?? []) : []).flatMap((thing) => kept([path, compiled], thing) ?? []);
	};
	const words = wordsOf(files, languages);
	const thresholds = kept(part('thresholds'), part('thresholds')[1]?.thresholds);
	const crown = kept(part('crown'), part('crown')[1]?.crown);
	const feeding = {
		materials: list('materials', (c) => c.materials),
		guilds: list('guilds', (c) => c.guilds),
		ridges: list('ridges', (c) => c.ridges),
		everyday: list('everyday', (c) => c.everyday),
		prey: [] as Prey[],
		jaws: [] as Jaw[],
	};
	for (const [path, { kind, compiled }] of all) {
		if (kind.kind === 'prey') {
			const value = kept([path, null], compiled?.feeding?.prey);
			if (value && knownMaterials(files, path, value, feeding.materials))
				feeding.prey.push({ id: kind.id, ...value });
		} else if (kind.kind === 'jaw') {
			const value = kept([path, null], compiled?.feeding?.jaw);
			if (value) feeding.jaws.push({ id: kind.id, ...value });
		}
	}
	if (!words) return undefined;
	const first = words[languages[0].code];
	const said = <T extends { id: string }>(section: Section, things: T[]): T[] =>
		things.filter(({ id }) => hasWords(files, languages, section, id, words));
	const shown = {
		guilds: said('guilds', feeding.guilds),
		materials: said('materials', feeding.materials),
		prey: said('prey', feeding.prey),
		jaws: said('jaws', feeding.jaws),
		ridges: said('ridges', feeding.ridges),
		everyday: said('everyday', feeding.everyday),
	};
	for (const jaw of shown.jaws) stopWords(files, languages, jaw, words);
	unusedWords(files, languages, feeding, words, all);
	if (!thresholds || !crown || !first) return undefined;
	return { thresholds, crown, ...shown, words };
}

type Section = 'guilds' | 'materials' | 'prey' | 'jaws' | 'ridges' | 'everyday';
const SECTIONS: readonly Section[] = ['guilds', 'materials', 'prey', 'jaws', 'ridges', 'everyday'];

const wordsPath = (language: string): string => `feeding/words/${language}.yaml`;

/** Words by language; null when those of the first cannot be used. */
function wordsOf(files: ContentFiles, languages: readonly Language[]): Record<string, FeedingWords> | null {
	const words: Record<string, FeedingWords> = {};
	for (const [i, language] of languages.entries()) {
		const { code } = language;
		const path = wordsPath(code);
		const file = files.byPath.get(path);
		if (file?.compiled?.feedingWords) words[code] = file.compiled.feedingWords;
		if (file || files.meant.has(path)) continue;
		if (i === 0)
			report(files, path, 'feeding-part-missing', FILE_START, '', {
				file: path,
				without: 'room',
			});
		else {
			report(files, path, 'missing-translation', FILE_START, '', {
				file: wordsPath(languages[0].code),
				language,
				first: languages[0],
				part: 'words',
			});
		}
	}
	return words[languages[0].code] ? words : null;
}

/** Whether a thing has words in the first language; what is missing anywhere is told. */
function hasWords(
	files: ContentFiles,
	languages: readonly Language[],
	section: Section,
	id: string,
	words: Record<string, FeedingWords>,
): boolean {
	const [first, ...others] = languages;
	const key = `${section}.${id}`;
	const at = (code: string) => (words[code]?.[section] as Record<string, unknown> | undefined)?.[id];
	if (at(first.code) === undefined) {
		const file = wordsPath(first.code);
		// a text that is there and wrong has its own message
		if (!isWritten(files, file, section, id))
			report(files, file, 'feeding-words-missing', FILE_START, key, { key, file, language: first });
		return false;
	}
	for (const { code } of others) {
		if (!words[code] || at(code) !== undefined || isWritten(files, wordsPath(code), section, id)) continue;
		report(files, wordsPath(code), 'text-not-translated', FILE_START, key, {
			key,
			language: first,
			shown: shownWords(at(first.code)),
		});
	}
	return true;
}

const shownWords = (words: unknown): string =>
	typeof words === 'string' ? words : String((words as { name?: string }).name ?? '');

const isWritten = (files: ContentFiles, path: string, ...steps: string[]): boolean =>
	files.byPath.get(path)?.compiled?.places.has(fieldPath(steps)) ?? false;

/** Stops of a jaw without words. */
function stopWords(
	files: ContentFiles,
	languages: readonly Language[],
	jaw: Jaw,
	words: Record<string, FeedingWords>,
): void {
	const [first] = languages;
	for (const { code } of languages) {
		const own = words[code]?.jaws[jaw.id];
		if (!own) continue;
		for (const { id } of jaw.stops) {
			if (own.stops[id]) continue;
			const key = `jaws.${jaw.id}.stops.${id}`;
			const shown = words[first.code].jaws[jaw.id]?.stops[id]?.name ?? id;
			report(files, wordsPath(code), 'text-not-translated', FILE_START, key, {
				key,
				language: first,
				shown,
			});
		}
	}
}

/** Words of things that no file describes. */
function unusedWords(
	files: ContentFiles,
	languages: readonly Language[],
	feeding: Record<Section, { id: string }[]>,
	words: Record<string, FeedingWords>,
	all: readonly [string, KnownFile][],
): void {
	for (const section of SECTIONS) {
		const known = new Set(feeding[section].map(({ id }) => id));
		// what is left out because of its own problems is not unused
		const written = new Set(
			all.flatMap(([path, { kind, compiled }]) => {
				if (section === 'prey' && kind.kind === 'prey') return [kind.id];
				if (section === 'jaws' && kind.kind === 'jaw') return [kind.id];
				return path === `feeding/${section}.yaml` ? [...(compiled?.places.keys() ?? [])] : [];
			}),
		);
		for (const { code } of languages) {
			const path = wordsPath(code);
			for (const id of Object.keys(words[code]?.[section] ?? {})) {
				if (known.has(id) || written.has(id)) continue;
				const steps = [section, id];
				const place = placeOf(files.byPath.get(path)!.compiled!.places, steps, 'key');
				const file =
					section === 'prey' || section === 'jaws' ? `feeding/${section}/` : `feeding/${section}.yaml`;
				report(files, path, 'text-not-used', place, fieldPath(steps), {
					key: id,
					meant: suggest(
						id,
						[...known].filter((other) => !(other in words[code][section])),
					),
					file,
				});
			}
		}
	}
}

function knownMaterials(
	files: ContentFiles,
	path: string,
	{ layers }: Omit<Prey, 'id'>,
	materials: readonly { id: string }[],
): boolean {
	const known = materials.map(({ id }) => id);
	let all = true;
	for (const [i, { material }] of layers.entries()) {
		if (known.includes(material)) continue;
		all = false;
		const steps = ['layers', i, 'material'];
		const place = placeOf(files.byPath.get(path)!.compiled!.places, steps);
		report(files, path, 'unknown-material', place, fieldPath(steps), {
			found: material,
			meant: suggest(material, known),
		});
	}
	return all;
}

/** Numbers that rest on a recalled source and do not say so. */
function unmarked<T>(files: ContentFiles, items: Items, path: string, thing: WithSources<T>): void {
	const compiled = files.byPath.get(path)?.compiled;
	for (const { id, path: steps } of thing.references) {
		if (steps[steps.length - 1] !== 'source' || items.sources.get(id)?.tag !== 'memory') continue;
		if (compiled!.places.has(fieldPath([...steps.slice(0, -1), 'tag']))) continue;
		report(files, path, 'number-not-marked', placeOf(compiled!.places, steps), fieldPath(steps), {
			source: id,
		});
	}
}
