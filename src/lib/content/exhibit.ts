import type { CrownMarks, CrownMeasures } from '../domain/measure/crownMeasures';
import type { Region } from '../domain/mesh/triMesh';
import type { ToothForm } from '../domain/tooth/form';
import type { Feeding } from './feedingContent';
import type { FileFrame } from './fileFrame';
import type { JawPlace } from '../domain/quiz/question';
import type { QuizContent } from './quiz/types';
import type { ReplacementContent } from './replacement/types';
import type { Show } from './shown/isShown';
import type { ScreenSettings } from './screens/types';
import type { Direction } from './textDirection';

/** Text by language code; a missing language falls back to the exhibit's first language. */
export type ByLang<T> = Readonly<Record<string, T>>;

export const ROOMS = ['compare', 'feeding', 'replacement', 'which-animal', 'quiz', 'talks'] as const;
export type RoomId = (typeof ROOMS)[number];

/** A draft is seen by staff only. */
export const STATUSES = ['draft', 'published'] as const;

export const PARTS = ['crown', 'shed-crown', 'rooted-tooth', 'germ', 'jaw-piece'] as const;
/** crown = broken or cut off above the root; shed-crown = lost in life, root resorbed; germ = never erupted */
export type Part = (typeof PARTS)[number];

export const PRESERVATIONS = ['black', 'tan', 'honey', 'grey', 'living'] as const;
export type Preservation = (typeof PRESERVATIONS)[number];

export const CERTAINTIES = ['sure', 'likely', 'unsure'] as const;
export type Certainty = (typeof CERTAINTIES)[number];

/** seen = read in the work itself; second-hand = read about; memory = recalled, must be marked on screen */
export const SOURCE_TAGS = ['seen', 'second-hand', 'memory', 'ours'] as const;
export type SourceTag = (typeof SOURCE_TAGS)[number];

export interface Source {
	id: string;
	citation: string;
	doi?: string;
	tag: SourceTag;
}

export interface LabelText {
	/** name shown large */
	title: string;
	/** one line under it */
	short: string;
	/** what the picture shows, for those who cannot see it; must not repeat the title */
	alt: string;
	/** name of each marked feature by feature id */
	features: Readonly<Record<string, string>>;
	/** the label's Markdown made safe HTML */
	html: string;
	/** the same as plain text */
	plain: string;
	/** there is a recording of the label being read; the mark changes when the recording does */
	sound?: string;
}

export interface GroupText {
	name: string;
	/** one line */
	short: string;
	html: string;
	plain: string;
	/** one line each on the animal in life, where something is known */
	moves?: string;
	/** where it fed and bred */
	lives?: string;
	eats?: string;
	eatenBy?: string;
}

/** An outline from a curator's SVG; only what has been checked. */
export interface Drawing {
	/** left, top, width, height; the width is the animal's length, snout on the left */
	viewBox: [number, number, number, number];
	/** data of each path (SVG path data) */
	paths: string[];
}

export interface Group {
	id: string;
	/** Latin name shown in italics, if any */
	latin?: string;
	living: boolean;
	/** where it lives or lived */
	habitat: 'sea' | 'river' | 'land';
	/** snout to tail tip, metres, with the source that says so; one of the two numbers at least */
	length_m?: { typical?: number; largest?: number; source: string };
	drawing?: Drawing;
	sources: string[];
	text: ByLang<GroupText>;
}

export interface Bed {
	id: string;
	/** millions of years; both 0 for living animals */
	oldest_Ma: number;
	youngest_Ma: number;
	text: ByLang<{ name: string; short: string }>;
}

export type SpecimenShape =
	| { kind: 'model'; form: ToothForm; basedOn: string[] }
	/**
	 * `crown`: points marked on the scan, in the file's own frame, mm. `colour`: the scan's own, where it has any
	 * (as when it is left out), or that of its preservation.
	 */
	| {
			kind: 'scan';
			file: string;
			units: 'um' | 'mm' | 'cm' | 'm' | 'in';
			crown?: CrownMarks;
			colour?: ScanColour;
	  };

export const SCAN_COLOURS = ['scan', 'plain'] as const;
export type ScanColour = (typeof SCAN_COLOURS)[number];

/** What the card in the drawer says of the tooth's size; measured values are held against it. */
export interface DeclaredSize {
	crownHeight_mm?: number;
	baseLength_mm?: number;
	baseWidth_mm?: number;
}

/** A find's place, exact: to be kept in the house. */
export interface Locality {
	/** in words */
	place?: string;
	/** decimal degrees, WGS84; north and east above 0 */
	latitude_deg: number;
	longitude_deg: number;
	/** 1 = withheld; 2, 3, 4 = rounded to 0.1, 0.01, 0.001 degrees */
	sensitivity: number;
}

export const FEATURE_KINDS = ['carina', 'ridge', 'facet', 'pit', 'tip', 'neck', 'root', 'other'] as const;
export type FeatureKind = (typeof FEATURE_KINDS)[number];

export interface MarkedFeature {
	id: string;
	kind: FeatureKind;
	/** fraction of crown height; below 0 = on the root */
	at: number;
	/** degrees round the section (0 distal, 90 labial, 180 mesial, 270 lingual) */
	where_deg: number;
}

/** What has been worked out from the shape, kept by the hash of the shape. */
export interface PreparedShape {
	/** content hash of form or scan plus the preparer's version */
	hash: string;
	triangles: number;
	measures: CrownMeasures;
	/** bounds of the prepared mesh in its tooth frame, mm */
	bounds: { min: [number, number, number]; max: [number, number, number] };
	picture: PictureFrame;
	/** of a model: area of each region of its surface, before it is thinned for the screen */
	regionAreas_mm2?: Record<Region, number>;
	/** of a scan: where the file's own frame lies in the tooth frame */
	fileFrame?: FileFrame;
	/** of a scan whose labial side is marked: whether that side looks along +z or, on teeth of the other side, -z */
	labial?: '+z' | '-z';
}

/** A scan that could not be measured, prepared so that its crown can be marked; visitors never see it. */
export interface ProvisionalShape extends Pick<PreparedShape, 'hash' | 'triangles' | 'picture'> {
	/** along the file's own axes, mm */
	bounds: PreparedShape['bounds'];
	fileFrame: FileFrame;
}

/** How a tray picture is framed: a square with the tooth in its middle, mm. */
export interface PictureFrame {
	side_mm: number;
	/** width and height of the tooth as pictured */
	toothWidth_mm: number;
	toothHeight_mm: number;
}

export interface Specimen {
	id: string;
	accession: string;
	group: string;
	part: Part;
	preservation: Preservation;
	shape: SpecimenShape;
	declared?: DeclaredSize;
	prepared: PreparedShape;
	identified: { by: string; certainty: Certainty };
	/** absent = published */
	status?: 'draft';
	/** absent = always */
	show?: Show;
	/** id of a bed, absent for a living animal */
	bed?: string;
	/** where in its jaw the tooth stood; absent where nobody says */
	jawPlace?: JawPlace;
	/** where it was found, for other collections; never shown to visitors, and handed on rounded only */
	locality?: Locality;
	/** where found, as free text by language, lives in the label */
	features: MarkedFeature[];
	licence: string;
	rightsHolder: string;
	sources: string[];
	text: ByLang<LabelText>;
}

export interface GlossaryEntry {
	id: string;
	text: ByLang<{ term: string; meaning: string }>;
}

export interface Screen {
	diagonal_in: number;
	width_px: number;
	height_px: number;
	/** height of the picture's lower edge above the floor, mm; absent where nobody says */
	bottomEdge_mm?: number;
}

/** How long anonymous counts are kept where exhibit.yaml does not say, days. */
export const KEEP_DAYS = 400;

/** The whole exhibit, immutable; what a visitor's page is made of. */
export interface Exhibit {
	/** hash over everything below */
	hash: string;
	museum: string;
	/** `direction` only where the curator says it; else it follows from the code (textDirection) */
	languages: { code: string; name: string; direction?: Direction }[];
	rooms: RoomId[];
	/** days of the rooms that are not shown always */
	roomShows?: Partial<Record<RoomId, Show>>;
	/** IANA name; absent = the computer's own */
	timeZone?: string;
	screen: Screen;
	idle: { warnAfter_s: number; resetAfterWarning_s: number };
	contact?: string;
	/** where the same exhibit stands on the web, https, without a slash at its end */
	publicAddress?: string;
	specimens: Specimen[];
	groups: Group[];
	beds: Bed[];
	sources: Source[];
	glossary: GlossaryEntry[];
	/** tooth replacement; absent when the folder has no such files */
	replacement?: ReplacementContent;
	/** the folder `feeding/`; absent when it is not there or cannot be used */
	feeding?: Feeding;
	/** absent in a snapshot older than the quiz */
	quiz?: QuizContent;
	/** screens that differ from what stands above, by name; absent in a snapshot older than they are */
	screens?: ScreenSettings[];
	/** anonymous counts are deleted after so many days, KEEP_DAYS without; use is counted unless `use` is false */
	counts?: { keepDays?: number; use?: boolean };
	/** ICU messages by language and key */
	ui: ByLang<Readonly<Record<string, string>>>;
}
