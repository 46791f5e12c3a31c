import type { Source } from '../content/exhibit';
import type { Feeding, FoodMaterialFile, SourcedNumber } from '../content/feedingContent';
import type {
	FeedingView,
	FoodMaterialView,
	JawView,
	NumberView,
	PreyView,
	RidgeView,
} from '../content/feedingView';
import { CORNERS } from '../domain/feeding/position';
import { citations } from './citations';

/** The folder `feeding/` in one language; words missing there are those of the first. */
export function feedingFor(
	feeding: Feeding,
	sources: ReadonlyMap<string, Source>,
	lang: string,
	first: string,
): FeedingView {
	const own = feeding.words[lang];
	const base = feeding.words[first] ?? Object.values(feeding.words)[0];
	const number = (n: SourcedNumber): NumberView => ({
		value: n.value,
		low: n.low ?? null,
		high: n.high ?? null,
		source: citations([n.source], sources)[0] ?? { citation: n.source, tag: 'memory' },
		recalled: isRecalled(n, sources),
	});
	const { thresholds, crown } = feeding;
	const { sources: thresholdSources, ...bands } = thresholds;
	const materials = new Map(
		feeding.materials.map((material) => [
			material.id,
			materialView(material, own?.materials[material.id] ?? base.materials[material.id] ?? material.id),
		]),
	);
	return {
		thresholds: bands,
		thresholdCitations: citations(thresholdSources, sources),
		crown: {
			strength_MPa: crown.strength_MPa.value,
			enamel: { E_GPa: crown.enamel.E_GPa.value, nu: crown.enamel.nu.value },
			recalled: [crown.strength_MPa, crown.enamel.E_GPa].some((n) => isRecalled(n, sources)),
			numbers: {
				strength_MPa: number(crown.strength_MPa),
				E_GPa: number(crown.enamel.E_GPa),
				toughness_MPa_sqrtm: number(crown.toughness_MPa_sqrtm),
			},
		},
		corners: Object.fromEntries(
			CORNERS.map((corner) => [corner, own?.corners[corner] ?? base.corners[corner]]),
		) as FeedingView['corners'],
		guilds: feeding.guilds.flatMap(({ id, bands, corner, sources: ids }) => {
			const words = own?.guilds[id] ?? base.guilds[id];
			return words ? [{ id, bands, corner, ...words, sourceCitations: citations(ids, sources) }] : [];
		}),
		prey: bySoftness(feeding).flatMap(
			({ id, outline, layers, shell, length_mm, sources: ids }): PreyView[] => {
				const words = own?.prey[id] ?? base.prey[id];
				const built = layers.flatMap(({ material, thickness_mm }) => {
					const of = materials.get(material);
					return of
						? [{ material: of, thickness_mm: thickness_mm.value, thickness: number(thickness_mm) }]
						: [];
				});
				if (!words || built.length < layers.length) return [];
				return [
					{
						id,
						outline,
						layers: built,
						...(shell
							? {
									shell: {
										radius_mm: shell.radius_mm.value,
										strength_MPa: shell.strength_MPa.value,
										numbers: { radius_mm: number(shell.radius_mm), strength_MPa: number(shell.strength_MPa) },
									},
								}
							: {}),
						length: length_mm ? number(length_mm) : null,
						...words,
						sourceCitations: citations(ids, sources),
					},
				];
			},
		),
		jaws: feeding.jaws.flatMap(({ id, teeth, stops, sources: ids }): JawView[] => {
			const words = own?.jaws[id] ?? base.jaws[id];
			if (!words) return [];
			const { stops: stopWords, ...rest } = words;
			return [
				{
					id,
					teeth,
					...rest,
					stops: stops.map((stop) => {
						const said = stopWords[stop.id] ?? base.jaws[id]?.stops[stop.id];
						return { ...stop, name: said?.name ?? stop.id, does: said?.does ?? '' };
					}),
					sourceCitations: citations(ids, sources),
				},
			];
		}),
		ridges: feeding.ridges.flatMap(({ id, verdict, sourcesFor, sourcesAgainst }): RidgeView[] => {
			const words = own?.ridges[id] ?? base.ridges[id];
			return words
				? [
						{
							id,
							verdict,
							...words,
							citationsFor: citations(sourcesFor, sources),
							citationsAgainst: citations(sourcesAgainst, sources),
						},
					]
				: [];
		}),
		everyday: [...feeding.everyday]
			.sort((a, b) => a.mass_kg.value - b.mass_kg.value)
			.flatMap(({ id, mass_kg }) => {
				const message = own?.everyday[id] ?? base.everyday[id];
				return message ? [{ id, mass_kg: mass_kg.value, mass: number(mass_kg), message }] : [];
			}),
	};

	function materialView(material: FoodMaterialFile, name: string): FoodMaterialView {
		const { id, resists_MPa, elastic, edgesSource, basis, gives, edges, standIn } = material;
		const used = [resists_MPa, ...(elastic ? [elastic.E_GPa] : [])];
		return {
			id,
			name,
			resists_MPa: resists_MPa.value,
			basis,
			gives,
			...(elastic ? { elastic: { E_GPa: elastic.E_GPa.value, nu: elastic.nu.value } } : {}),
			edges,
			standIn,
			recalled: used.some((n) => isRecalled(n, sources)),
			numbers: {
				resists_MPa: number(resists_MPa),
				E_GPa: elastic ? number(elastic.E_GPa) : null,
			},
			edgesSource: citations([edgesSource], sources)[0] ?? { citation: edgesSource, tag: 'memory' },
		};
	}
}

/** Prey by the greatest pressure that any layer stands, the softest first. */
function bySoftness({ prey, materials }: Feeding): Feeding['prey'] {
	const resists = new Map(materials.map(({ id, resists_MPa }) => [id, resists_MPa.value]));
	const hardest = ({ layers }: Feeding['prey'][number]): number =>
		Math.max(...layers.map(({ material }) => resists.get(material) ?? 0));
	return [...prey].sort((a, b) => hardest(a) - hardest(b) || a.layers.length - b.layers.length);
}

const isRecalled = ({ tag, source }: SourcedNumber, sources: ReadonlyMap<string, Source>): boolean =>
	tag === 'memory' || ['memory', 'second-hand'].includes(sources.get(source)?.tag ?? 'memory');
