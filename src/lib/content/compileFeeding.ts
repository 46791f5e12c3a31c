import { GUILD_IDS, type Band, type GuildId } from '../domain/feeding/guilds';
import type { PlaceTrait } from '../domain/feeding/evidence';
import { checkFields } from './checkFields';
import { checkEntry } from './compileTable';
import type { Reference } from './compileSpecimen';
import type {
	CrownMaterialFile,
	Everyday,
	FoodMaterialFile,
	GuildFile,
	Jaw,
	Prey,
	RidgeIdea,
	SourcedNumber,
} from './feedingContent';
import {
	crownSchema,
	everydaySchema,
	guildSchema,
	jawSchema,
	materialSchema,
	preySchema,
	ridgeSchema,
	thresholdsSchema,
} from './feedingSchemas';
import type { Feeding } from './feedingContent';
import { placeOf } from './explainIssue';
import { fieldPath, valueAt } from './fieldPath';
import type { FeedingPart } from './fileKind';
import { finding, type Finding } from './finding';
import type { YamlResult } from './readYaml';
import { suggest } from './suggest';

/** One thing of the folder with the sources that it names. */
export interface WithSources<T> {
	value?: T;
	references: Reference[];
	/** where it stands in its file */
	path: (string | number)[];
}

export interface CompiledFeeding {
	thresholds?: WithSources<Feeding['thresholds']>;
	crown?: WithSources<CrownMaterialFile>;
	materials?: WithSources<FoodMaterialFile>[];
	guilds?: WithSources<GuildFile>[];
	ridges?: WithSources<RidgeIdea>[];
	everyday?: WithSources<Everyday>[];
	prey?: WithSources<Omit<Prey, 'id'>>;
	jaw?: WithSources<Omit<Jaw, 'id'>>;
}

type Compiled = { compiled: CompiledFeeding; findings: Finding[] };
type Path = (string | number)[];

/** Checks one table of `feeding/`: one bad entry leaves out that entry. */
export function compileFeedingPart(part: FeedingPart, yaml: YamlResult): Compiled {
	switch (part) {
		case 'thresholds': {
			const { value, findings } = whole(yaml, thresholdsSchema);
			const { preyOverTooth, ...bands } = value ?? {};
			const range = preyOverTooth && bandOf(preyOverTooth, yaml, ['prey_over_tooth'], findings);
			const thresholds = value && range ? { ...value, ...bands, preyOverTooth: range } : undefined;
			return {
				compiled: { thresholds: { value: thresholds, references: references(yaml), path: [] } },
				findings,
			};
		}
		case 'crown': {
			const { value, findings } = whole(yaml, crownSchema);
			const crown = value && {
				strength_MPa: value.strength_MPa,
				enamel: { E_GPa: value.enamelStiffness_GPa, nu: value.enamelPoisson },
				toughness_MPa_sqrtm: value.enamelToughness,
			};
			return { compiled: { crown: { value: crown, references: references(yaml), path: [] } }, findings };
		}
		case 'materials': {
			const { entries, findings } = table(yaml, materialSchema, (id, value, own) => {
				const { stiffness_GPa, poisson, borrowed, ...rest } = value;
				if ((stiffness_GPa === undefined) !== (poisson === undefined))
					own.push(finding('elastic-half', placeOf(yaml.places, [id], 'key'), id, null));
				const elastic = stiffness_GPa && poisson ? { elastic: { E_GPa: stiffness_GPa, nu: poisson } } : {};
				return { id, ...rest, ...elastic, standIn: borrowed ?? false };
			});
			return { compiled: { materials: entries }, findings };
		}
		case 'guilds': {
			const { entries, findings } = table(yaml, guildSchema, (id, value, own): GuildFile | undefined => {
				const known = GUILD_IDS.find((guild) => guild === id);
				if (!known) own.push(unknownGuild(id, yaml));
				const bands = Object.entries(value.bands).flatMap(([trait, band]) => {
					const found = band && bandOf(band, yaml, [id, 'bands', trait], own);
					return found ? [[trait as PlaceTrait, found] as const] : [];
				});
				return (
					known && {
						id: known,
						bands: Object.fromEntries(bands),
						corner: value.corner ?? null,
						sources: value.sources,
					}
				);
			});
			return { compiled: { guilds: entries }, findings };
		}
		case 'ridges': {
			const { entries, findings } = table(yaml, ridgeSchema, (id, value) => ({ id, ...value }));
			return { compiled: { ridges: entries }, findings };
		}
		case 'everyday': {
			const { entries, findings } = table(yaml, everydaySchema, (id, value) => ({ id, ...value }));
			return { compiled: { everyday: entries }, findings };
		}
	}
}

/** Checks one prey. */
export function compilePrey(yaml: YamlResult): Compiled {
	const { value, findings } = whole(yaml, preySchema);
	return { compiled: { prey: { value, references: references(yaml), path: [] } }, findings };
}

/** Checks one jaw: its stops rise from the front (0) to the back (1). */
export function compileJaw(yaml: YamlResult): Compiled {
	const { value, findings } = whole(yaml, jawSchema);
	const stops = value?.stops ?? [];
	const rises =
		stops.length >= 2 &&
		stops[0].at === 0 &&
		stops[stops.length - 1].at === 1 &&
		stops.every(({ at }, i) => i === 0 || at > stops[i - 1].at);
	if (value && !rises)
		findings.push(finding('jaw-stops', placeOf(yaml.places, ['stops'], 'key'), 'stops', null));
	const jaw =
		value && rises
			? {
					...value,
					stops: stops.map(({ id, at, crownHeight_mm, lens, ...traits }) => ({
						id,
						at,
						crownHeight_mm,
						traits: { ...traits, lens: lens ?? 0 },
					})),
				}
			: undefined;
	return { compiled: { jaw: { value: jaw, references: references(yaml), path: [] } }, findings };
}

type Schema<T> = Parameters<typeof checkFields<T>>[0];

function whole<T>(yaml: YamlResult, schema: Schema<T>): { value?: T; findings: Finding[] } {
	const { value, findings } = checkFields(schema, yaml.value, yaml.places);
	findings.push(...rangeFindings(yaml, []));
	return { value: usable(findings) ? value : undefined, findings };
}

function table<T, U>(
	yaml: YamlResult,
	schema: Schema<T>,
	make: (id: string, value: T, findings: Finding[]) => U | undefined,
): { entries: (WithSources<U> & { id: string })[]; findings: Finding[] } {
	const findings: Finding[] = [];
	const entries = Object.entries(yaml.value as Record<string, unknown>).map(([id, raw]) => {
		const checked = checkEntry(schema, id, raw, yaml.places) as { value?: T; findings: Finding[] };
		const own = [...checked.findings, ...rangeFindings(yaml, [id])];
		const made = checked.value === undefined ? undefined : make(id, checked.value, own);
		findings.push(...own);
		return { id, path: [id], value: usable(own) ? made : undefined, references: references(yaml, [id]) };
	});
	return { entries, findings };
}

const usable = (findings: Finding[]): boolean => findings.every(({ severity }) => severity !== 'error');

/** Every source that is named under a path: `source`, `sources`, `edges_source` and so on. */
function references(yaml: YamlResult, under: Path = []): Reference[] {
	const found: Reference[] = [];
	walk(valueAt(yaml.value, under), under, (value, path) => {
		const key = [...path].reverse().find((step) => typeof step === 'string') ?? '';
		if (typeof value === 'string' && /(^|_)sources?($|_)/.test(String(key))) found.push({ id: value, path });
	});
	return found;
}

/** Numbers whose low, value and high do not rise. */
function rangeFindings(yaml: YamlResult, under: Path): Finding[] {
	const found: Finding[] = [];
	walk(valueAt(yaml.value, under), under, (node, path) => {
		const n = node as Partial<SourcedNumber>;
		if (typeof n !== 'object' || n === null || typeof n.value !== 'number') return;
		const [low, high] = [n.low ?? n.value, n.high ?? n.value];
		if (!(typeof low === 'number' && typeof high === 'number') || (low <= n.value && n.value <= high)) return;
		const place = placeOf(yaml.places, path, 'key');
		found.push(finding('low-high-swapped', place, fieldPath(path), { low, high, value: n.value }));
	});
	return found;
}

function walk(value: unknown, path: Path, visit: (value: unknown, path: Path) => void): void {
	visit(value, path);
	if (typeof value !== 'object' || value === null) return;
	const steps = Array.isArray(value) ? value.map((item, i) => [i, item] as const) : Object.entries(value);
	for (const [step, item] of steps) walk(item, [...path, step], visit);
}

function bandOf(
	{ from, to }: { from: number; to: number },
	yaml: YamlResult,
	path: Path,
	findings: Finding[],
): Band | undefined {
	if (from < to) return [from, to];
	findings.push(finding('band-swapped', placeOf(yaml.places, path, 'key'), fieldPath(path), { from, to }));
	return undefined;
}

function unknownGuild(id: string, yaml: YamlResult): Finding {
	const known: GuildId[] = [...GUILD_IDS];
	const meant = suggest(id, known);
	return finding('unknown-guild', placeOf(yaml.places, [id], 'key'), id, { found: id, meant, known });
}
