import type { CrownTraits } from '../domain/feeding/crownTraits';
import type { GuildBands, GuildId } from '../domain/feeding/guilds';
import type { Corner } from '../domain/feeding/position';
import type { FoodMaterial } from '../domain/feeding/prey';
import type { Thresholds } from '../domain/feeding/thresholds';
import type { ByLang } from './exhibit';

/** A number that visitors may see, with who says so. */
export interface SourcedNumber {
	value: number;
	/** range that the source gives, where it gives one */
	low?: number;
	high?: number;
	/** id of a source */
	source: string;
	/** recalled and not looked up: shown with a mark */
	tag?: 'memory';
}

/** A material of prey: numbers with their sources. */
export interface FoodMaterialFile {
	id: string;
	resists_MPa: SourcedNumber;
	basis: FoodMaterial['basis'];
	gives: FoodMaterial['gives'];
	elastic?: { E_GPa: SourcedNumber; nu: SourcedNumber };
	edges: FoodMaterial['edges'];
	/** source of `edges` */
	edgesSource: string;
	standIn: boolean;
}

/** How a prey is drawn; the drawings are the room's. */
export const PREY_OUTLINES = ['flesh', 'squid', 'fish', 'bone', 'shell', 'turtle'] as const;
export type PreyOutline = (typeof PREY_OUTLINES)[number];

export interface Prey {
	id: string;
	outline: PreyOutline;
	/** from outside in */
	layers: { material: string; thickness_mm: SourcedNumber }[];
	/** a shell that may crack as a whole */
	shell?: { radius_mm: SourcedNumber; strength_MPa: SourcedNumber };
	/** the whole animal, for "prey size follows tooth size" */
	length_mm?: SourcedNumber;
	sources: string[];
}

export interface GuildFile extends GuildBands {
	/** corner that it lies nearest to; null = the middle */
	corner: Corner | null;
	sources: string[];
}

export interface CrownMaterialFile {
	strength_MPa: SourcedNumber;
	enamel: { E_GPa: SourcedNumber; nu: SourcedNumber };
	toughness_MPa_sqrtm: SourcedNumber;
}

export interface JawStopFile {
	id: string;
	at: number;
	crownHeight_mm: number;
	traits: CrownTraits;
}

/** A jaw's row from front to back. Its numbers are of our own making unless a source says otherwise. */
export interface Jaw {
	id: string;
	teeth: number;
	stops: JawStopFile[];
	sources: string[];
}

/** favoured = most who studied it think so; open = nobody has tested it; negligible = tested, and hardly any */
export const RIDGE_VERDICTS = ['favoured', 'open', 'negligible'] as const;
export type RidgeVerdict = (typeof RIDGE_VERDICTS)[number];

/** What ridges may do. */
export interface RidgeIdea {
	id: string;
	verdict: RidgeVerdict;
	sourcesFor: string[];
	sourcesAgainst: string[];
}

/** A thing whose weight everybody knows. */
export interface Everyday {
	id: string;
	mass_kg: SourcedNumber;
}

export interface CornerWords {
	name: string;
	/** the shape in a word or two */
	shape: string;
	/** what it is good at, one line */
	does: string;
}

export interface GuildWords {
	name: string;
	form: string;
	wear: string;
	food: string;
	/** who has such teeth */
	examples: string;
}

export interface PreyWords {
	name: string;
	/** one line: what it is like to bite */
	short: string;
	/** what to see here, one or two sentences */
	lesson: string;
}

export interface JawWords {
	name: string;
	short: string;
	stops: Readonly<Record<string, { name: string; does: string }>>;
}

export interface RidgeWords {
	name: string;
	/** what speaks for it */
	for: string;
	/** what speaks against it, or what is not known */
	against: string;
}

/** Everything said in one language; ids of the first language at least are all there. */
export interface FeedingWords {
	corners: Readonly<Record<Corner, CornerWords>>;
	guilds: Readonly<Partial<Record<GuildId, GuildWords>>>;
	materials: Readonly<Record<string, string>>;
	prey: Readonly<Record<string, PreyWords>>;
	jaws: Readonly<Record<string, JawWords>>;
	ridges: Readonly<Record<string, RidgeWords>>;
	/** ICU messages with {count} */
	everyday: Readonly<Record<string, string>>;
}

/** What the folder `feeding/` holds. */
export interface Feeding {
	/** teaching bands; `sources` says whose */
	thresholds: Thresholds & { sources: string[] };
	crown: CrownMaterialFile;
	materials: FoodMaterialFile[];
	guilds: GuildFile[];
	prey: Prey[];
	jaws: Jaw[];
	ridges: RidgeIdea[];
	everyday: Everyday[];
	words: ByLang<FeedingWords>;
}
