/**
 * What a page is given: the exhibit in one language, as plain data. Types only, so that screens can
 * import them without any server code.
 */
import type { ShapeFacts } from '../domain/compare/traits';
import type { CrownMeasures } from '../domain/measure/crownMeasures';
import type { FeedingView } from './feedingView';
import type {
	Certainty,
	Drawing,
	FeatureKind,
	Part,
	PictureFrame,
	Preservation,
	RoomId,
	Screen,
	SourceTag,
} from './exhibit';
import type { Direction } from './textDirection';

/** A prepared shape: everything the stage needs (a `ShapeRef`) and the picture for trays and printing. */
export interface ShapeView {
	/** address of the prepared GLB */
	url: string;
	/** address of the tray picture, a square WebP, transparent round the tooth */
	pictureUrl: string;
	/** address of the line drawing, a `LineDrawing` as JSON */
	drawingUrl: string;
	picture: PictureFrame;
	preservation: Preservation;
	/** bounds in the tooth frame, mm */
	bounds: { min: [number, number, number]; max: [number, number, number] };
	/** height of the crown's apex above the plane of its base, mm */
	crownHeight_mm: number;
	/** triangles of the full level in the GLB */
	triangles: number;
}

export interface FeatureView {
	id: string;
	name: string;
	kind: FeatureKind;
	/** fraction of crown height */
	at: number;
	/**
	 * Degrees round the section of the prepared shape, from +x towards +z: 0 distal, 90 labial, 180 mesial,
	 * 270 lingual; on a scan whose labial side looks along -z, 90 lingual and 270 labial.
	 */
	where_deg: number;
}

export interface GroupView {
	id: string;
	name: string;
	/** Latin name, shown in italics; null for none */
	latin: string | null;
	/** one line */
	short: string;
	living: boolean;
	habitat: 'sea' | 'river' | 'land';
	/** snout to tail tip, metres; one of the two numbers at least; null where nobody says */
	length: { typical_m: number | null; largest_m: number | null; source: CitationView } | null;
	/** the animal's outline, null for none */
	drawing: Drawing | null;
	/** one line each, null where nothing is written */
	moves: string | null;
	/** where it fed and bred */
	lives: string | null;
	eats: string | null;
	eatenBy: string | null;
	/** language of the words above */
	textLang: string;
	/** what is said about the group rests on these */
	sourceCitations: CitationView[];
}

export interface BedView {
	id: string;
	name: string;
	/** one line */
	short: string;
	/** millions of years */
	oldest_Ma: number;
	youngest_Ma: number;
}

export interface CitationView {
	citation: string;
	doi?: string;
	tag: SourceTag;
}

export interface SpecimenView {
	id: string;
	accession: string;
	title: string;
	/** one line */
	short: string;
	/** for those who cannot see the picture */
	alt: string;
	/** the label, safe HTML */
	html: string;
	/** address of the label read aloud in that language, null for none */
	soundUrl: string | null;
	/** language of the texts above, which is another than asked for where a translation is missing */
	textLang: string;
	features: FeatureView[];
	group: GroupView;
	part: Part;
	preservation: Preservation;
	/** null for a living animal */
	bed: BedView | null;
	/** model = made from published proportions; scan = of the specimen itself */
	kind: 'model' | 'scan';
	sourceCitations: CitationView[];
	identified: { by: string; certainty: Certainty };
	licence: string;
	rightsHolder: string;
	measures: CrownMeasures;
	/** what is known of the shape beside its measures */
	facts: ShapeFacts;
	shape: ShapeView;
}

export interface GlossaryView {
	id: string;
	term: string;
	meaning: string;
}

export interface ExhibitView {
	/** hash of the exhibit that this was made from */
	hash: string;
	museum: string;
	/** language of this view, always one of `languages` */
	lang: string;
	languages: { code: string; name: string; dir: Direction }[];
	rooms: RoomId[];
	screen: Screen;
	idle: { warnAfter_s: number; resetAfterWarning_s: number };
	/** null for none */
	contact: string | null;
	/** where the same exhibit stands on the web, https, without a slash at its end; null for nowhere */
	publicAddress: string | null;
	/** anonymous use is counted on the gallery's screens */
	countsUse: boolean;
	/** ICU messages by key; keys missing in this language are filled from the first */
	ui: Record<string, string>;
	specimens: SpecimenView[];
	glossary: GlossaryView[];
	/** null when the folder `feeding/` is not there or cannot be used */
	feeding: FeedingView | null;
}

/** What the attract loop asks in one language. */
export interface AttractAsks {
	/** code of the language */
	lang: string;
	/** its own name */
	name: string;
	/** the questions, in the same order in every language */
	asks: string[];
	/** what to do, in one line */
	touch: string;
}
