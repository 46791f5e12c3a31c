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
		prey: feeding.prey.flatMap(
			({ id, outline, layers, shellRadius_mm, length_mm, sources: ids }): PreyView[] => {
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
						...(shellRadius_mm ? { shellRadius_mm: shellRadius_mm.value } : {}),
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
		const { id, resists_MPa, plateStrength_MPa, elastic, edgesSource, basis, gives, edges, standIn } =
			material;
		const used = [
			resists_MPa,
			...(plateStrength_MPa ? [plateStrength_MPa] : []),
			...(elastic ? [elastic.E_GPa] : []),
		];
		return {
			id,
			name,
			resists_MPa: resists_MPa.value,
			basis,
			gives,
			...(plateStrength_MPa ? { plateStrength_MPa: plateStrength_MPa.value } : {}),
			...(elastic ? { elastic: { E_GPa: elastic.E_GPa.value, nu: elastic.nu.value } } : {}),
			edges,
			standIn,
			recalled: used.some((n) => isRecalled(n, sources)),
			numbers: {
				resists_MPa: number(resists_MPa),
				plateStrength_MPa: plateStrength_MPa ? number(plateStrength_MPa) : null,
				E_GPa: elastic ? number(elastic.E_GPa) : null,
			},
			edgesSource: citations([edgesSource], sources)[0] ?? { citation: edgesSource, tag: 'memory' },
		};
	}
}

const isRecalled = ({ tag, source }: SourcedNumber, sources: ReadonlyMap<string, Source>): boolean =>
	tag === 'memory' || sources.get(source)?.tag === 'memory';
