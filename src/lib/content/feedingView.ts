/** What the feeding room is given: the folder `feeding/` in one language, as plain data. Types only. */
import type { CrownMaterial } from '../domain/feeding/bite';
import type { CrownTraits } from '../domain/feeding/crownTraits';
import type { GuildBands } from '../domain/feeding/guilds';
import type { Corner } from '../domain/feeding/position';
import type { FoodMaterial } from '../domain/feeding/prey';
import type { Thresholds } from '../domain/feeding/thresholds';
import type {
	CornerWords,
	GuildWords,
	JawWords,
	PreyOutline,
	PreyWords,
	RidgeVerdict,
	RidgeWords,
} from './feedingContent';
import type { CitationView } from './view';

/** A number with its source; `recalled` must be shown with a mark. */
export interface NumberView {
	value: number;
	low: number | null;
	high: number | null;
	source: CitationView;
	recalled: boolean;
}

/** Ready for `bite`, with the numbers behind it. */
export interface FoodMaterialView extends FoodMaterial {
	name: string;
	numbers: {
		resists_MPa: NumberView;
		E_GPa: NumberView | null;
	};
	edgesSource: CitationView;
}

export interface PreyLayerView {
	material: FoodMaterialView;
	thickness_mm: number;
	thickness: NumberView;
}

/** A `PreyBody`. */
export interface PreyView extends PreyWords {
	id: string;
	outline: PreyOutline;
	layers: PreyLayerView[];
	shell?: {
		radius_mm: number;
		strength_MPa: number;
		numbers: { radius_mm: NumberView; strength_MPa: NumberView };
	};
	length: NumberView | null;
	sourceCitations: CitationView[];
}

export interface GuildView extends GuildBands, GuildWords {
	corner: Corner | null;
	sourceCitations: CitationView[];
}

export interface JawStopView {
	id: string;
	at: number;
	crownHeight_mm: number;
	traits: CrownTraits;
	name: string;
	does: string;
}

/** A `JawGradient`. */
export interface JawView extends Omit<JawWords, 'stops'> {
	id: string;
	teeth: number;
	stops: JawStopView[];
	sourceCitations: CitationView[];
}

export interface RidgeView extends RidgeWords {
	id: string;
	verdict: RidgeVerdict;
	citationsFor: CitationView[];
	citationsAgainst: CitationView[];
}

export interface EverydayView {
	id: string;
	mass_kg: number;
	mass: NumberView;
	/** ICU message with {count} */
	message: string;
}

export interface FeedingView {
	thresholds: Thresholds;
	/** whose bands they are */
	thresholdCitations: CitationView[];
	/** a `CrownMaterial`, with its numbers */
	crown: CrownMaterial & {
		numbers: { strength_MPa: NumberView; E_GPa: NumberView; toughness_MPa_sqrtm: NumberView };
	};
	corners: Readonly<Record<Corner, CornerWords>>;
	guilds: GuildView[];
	prey: PreyView[];
	jaws: JawView[];
	ridges: RidgeView[];
	/** lightest first */
	everyday: EverydayView[];
}
