import type { Evidence, PlaceTrait } from './evidence';

export const GUILD_IDS = ['pierce-one', 'pierce-two', 'smash', 'crunch', 'crush', 'general', 'cut'] as const;
/** The seven guilds of Massare 1987, J. Vert. Paleontol. 7: 121-137; they overlap. */
export type GuildId = (typeof GUILD_IDS)[number];

/** From .. to of a trait; teaching bands of ours. */
export type Band = readonly [low: number, high: number];

/** What a guild's teeth are like; a trait that is left out may be anything. */
export interface GuildBands {
	id: GuildId;
	bands: Readonly<Partial<Record<PlaceTrait, Band>>>;
}

export interface GuildChance {
	id: GuildId;
	/** share of belief among the guilds; all sum to 1 */
	probability: number;
	/** how well each banded trait fits, 0 .. 1; worst first */
	fits: { trait: PlaceTrait; fit: number }[];
}

/** Traits whose bands are read on a logarithmic scale. */
const LOGARITHMIC: ReadonlySet<PlaceTrait> = new Set(['slenderness', 'tip', 'roundness', 'size']);
/** How softly a band ends, one standard deviation on the trait's scale; ours. */
const SOFT: Readonly<Record<PlaceTrait, number>> = {
	slenderness: 0.14,
	tip: 0.35,
	edges: 0.15,
	roundness: 0.12,
	section: 0.35,
	curve: 8,
	wear: 0.08,
	ridges: 5,
	size: 0.5,
};
/** What may be expected of a trait that nobody knows: a middle and how far teeth differ; ours. */
const EXPECTED: Readonly<Record<PlaceTrait, [number, number]>> = {
	slenderness: [1.9, 0.5],
	tip: [0.18, 0.6],
	edges: [0.5, 0.4],
	roundness: [0.8, 0.3],
	section: [0.3, 0.4],
	curve: [15, 12],
	wear: [0.05, 0.1],
	ridges: [10, 12],
	size: [25, 0.8],
};
/**
 * Share of belief that is spread evenly over all guilds, since form and last meals can disagree (Holwerda et al. 2023,
 * doi:10.1038/s41598-023-42369-7, on wear of mosasaurs' teeth); how much is ours.
 */
const DOUBT = 0.1;
/** No single trait rules a guild out. */
const LEAST_FIT = 0.01;

/**
 * How likely each guild is for a tooth, the likeliest first. Bayes' rule: over a guild's bands, how much of the reading lies
 * inside (soft ends), divided by how much of all teeth would. A ranking and no verdict: guilds overlap, the bands are ours, and all guilds are taken
 * as equally common beforehand.
 */
export function rankGuilds(evidence: Evidence, guilds: readonly GuildBands[]): GuildChance[] {
	const scored = guilds.map(({ id, bands }) => {
		const fits = (Object.entries(bands) as [PlaceTrait, Band][])
			.map(([trait, band]) => ({ trait, fit: fitOf(trait, band, evidence) }))
			.sort((a, b) => a.fit - b.fit);
		const score = (Object.entries(bands) as [PlaceTrait, Band][]).reduce((product, [trait, band]) => {
			const fit = fits.find((one) => one.trait === trait)?.fit ?? 1;
			// a narrow band says more: its teeth share the same belief among fewer values
			return (product * fit) / Math.max(0.05, inBand(trait, band, ...EXPECTED[trait]));
		}, 1);
		return { id, fits, score };
	});
	const sum = scored.reduce((total, { score }) => total + score, 0);
	return scored
		.map(({ id, fits, score }) => {
			const even = 1 / scored.length;
			return { id, fits, probability: DOUBT * even + (1 - DOUBT) * (sum > 0 ? score / sum : even) };
		})
		.sort((a, b) => b.probability - a.probability);
}

function fitOf(trait: PlaceTrait, band: Band, evidence: Evidence): number {
	const { value, spread } = evidence[trait];
	const [middle, sd] = value === null ? EXPECTED[trait] : [value, spread];
	return Math.max(LEAST_FIT, inBand(trait, band, middle, sd));
}

/** How much of a normal distribution on the trait's scale lies in a band with soft ends. */
function inBand(trait: PlaceTrait, [low, high]: Band, middle: number, spread: number): number {
	const scale = (value: number): number => (LOGARITHMIC.has(trait) ? Math.log(Math.max(1e-6, value)) : value);
	const sd = Math.hypot(SOFT[trait], spread);
	const below = (limit: number): number => normalBelow((scale(limit) - scale(middle)) / sd);
	// nothing is below 0: a band that begins there has no lower end
	return below(high) - (low <= 0 ? 0 : below(low));
}

/** Share of a normal distribution below z: Abramowitz & Stegun 1964, 26.2.17, error under 7.5e-8. */
export function normalBelow(z: number): number {
	if (z < -8) return 0;
	if (z > 8) return 1;
	const t = 1 / (1 + 0.2316419 * Math.abs(z));
	const tail =
		(Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
		t *
		(0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
	return z > 0 ? 1 - tail : tail;
}
