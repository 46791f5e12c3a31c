/**
 * What the rest of the app may ask of the stage. Nothing here imports three.js, so that pages can
 * be typed against it while the stage itself is loaded later, in the background.
 */
import type { Preservation } from '../content/exhibit';
import type { CutSection } from '../domain/measure/cutSection';
import type { PlaneFrame } from '../domain/mesh/section';
import type { TriMesh } from '../domain/mesh/triMesh';
import type { Vec3 } from '../domain/vec3';

/** A prepared shape ready to be shown. */
export interface ShapeRef {
	/** address of the prepared GLB */
	url: string;
	preservation: Preservation;
	/** bounds in the tooth frame, mm */
	bounds: { min: readonly [number, number, number]; max: readonly [number, number, number] };
	/** height of the crown above its base, mm: what "same height" makes equal */
	crownHeight_mm: number;
}

/** One piece of a shape made in the browser. */
export interface MeshPart {
	/** stays the same from update to update */
	id: string;
	/** own frame of the part, mm, closed or open; `regions` per triangle as in prepared shapes */
	mesh: TriMesh;
	/** openness to the light per vertex of `mesh`, 0 shut in .. 1 open; left out = all open */
	occlusion?: ArrayLike<number>;
	/** 16 numbers, column by column: from the part's frame to the view's (mm); left out = where it is */
	place?: readonly number[];
	/** default: the shape's */
	preservation?: Preservation;
	/** height of the part's crown in its own frame, mm; default: the shape's */
	crownHeight_mm?: number;
	/** colour mixed in, sRGB 0 .. 255, and how much of it, 0 .. 1 */
	tint?: { rgb: readonly [number, number, number]; share: number };
	/** 0 .. 1; below 1 what lies behind or inside shines through; default 1 */
	opacity?: number;
	hidden?: boolean;
}

/** A shape made in the browser: one part or several in one view. */
export interface MeshShape {
	parts: readonly MeshPart[];
	preservation: Preservation;
	/** what the view makes room for, mm; parts may change size inside it, and what reaches out of it is cut off */
	bounds: ShapeRef['bounds'];
	crownHeight_mm: number;
	/** lay no shadow on the felt; default false */
	noShadow?: boolean;
}

/**
 * same-scale: one mm is one mm in every view; same-height: every crown is drawn equally tall; each-fits: every tooth as
 * large as its view allows; life-size: one mm is one mm on the glass, whether or not it fits, and nothing zooms
 */
export type ScaleMode = 'same-scale' | 'same-height' | 'each-fits' | 'life-size';

/** Where a tooth is cut across its long axis: mm above the base of its crown, or a share of the crown's height. */
export type Cut = { height_mm: number } | { fraction: number };

/** Where a view's tooth is turned to; yaw about its long axis, tilt towards the viewer, both degrees. */
export interface Pose {
	yaw_deg: number;
	tilt_deg: number;
	zoom: number;
	/** how the tooth stands before yaw and tilt turn it; absent = upright, tip up */
	stand?: Quat;
}

/** Unit quaternion x, y, z, w. */
export type Quat = readonly [number, number, number, number];

/**
 * A square turn of what is seen: a quarter to the left or right, upside down, to its back, or its top brought
 * near or sent far by a quarter.
 */
export type QuarterTurn = 'left' | 'right' | 'over' | 'back' | 'top-near' | 'top-far';

/** A place on a tooth's surface, tooth frame, mm. */
export interface SurfaceHit {
	point: Vec3;
	/** unit */
	normal: Vec3;
	/** id of the part it lies on, where the shape has parts */
	part?: string;
}

/** A mark that stays with the tooth; what it looks like is the page's business. */
export interface Pin {
	id: string;
	/** tooth frame, mm */
	point: Vec3;
	/** unit, outward; with it a pin also counts as hidden when its surface faces away */
	normal?: Vec3;
}

/** Where a point appears in a view's element. */
export interface PlaceInView {
	/** CSS px from the element's left and top */
	x: number;
	y: number;
	/** hidden by the tooth or facing away */
	behind: boolean;
}

/**
 * Where the key lamp stands. Both angles belong to the screen, not to the tooth: the tooth turns under the lamp.
 *
 * azimuth_deg: where the light comes from as seen on the screen, clockwise from above: 0 above, 90 right, 180 below,
 *   270 left. Wraps round.
 * elevation_deg: how far the lamp stands out of the plane of the screen towards the viewer, 3 .. 80: 3 is raking
 *   light that grazes what faces the viewer, 80 comes nearly straight from the front.
 */
export interface Lamp {
	azimuth_deg: number;
	elevation_deg: number;
}

export interface StageView {
	/** Shows a shape, replacing the last; resolves when its first frame has been drawn. `null` empties the view. */
	show(shape: ShapeRef | null): Promise<void>;
	/** Shows a shape made in the browser, replacing the last; resolves when its first frame has been drawn. */
	showMesh(shape: MeshShape): Promise<void>;
	/**
	 * Changes what `showMesh` shows; does nothing while that is not the shape shown. Parts are known by id: one whose
	 * mesh is the same object is left alone, one of the same topology only has its positions and normals sent again.
	 */
	updateMesh(shape: MeshShape): void;
	/** Turns by degrees (buttons and keys); with linked views all turn. */
	turnBy(yaw_deg: number, tilt_deg: number): void;
	zoomBy(factor: number): void;
	reset(): void;
	/** Eases to a pose; what is left out stays. With linked views all turn. */
	turnTo(pose: Partial<Pose>): void;
	/** Eases so that what looks this way (tooth frame) comes to face the viewer. */
	lookAlong(direction: Vec3): void;
	/** Eases to the nearest square way of standing, turned; yaw and tilt become 0. */
	quarterTurn(turn: QuarterTurn): void;
	/** The surface under a place in the window (CSS px), null beside the tooth or while empty. */
	pickAt(clientX: number, clientY: number): SurfaceHit | null;
	/** The surface nearest to a point; null while empty. */
	snap(point: Vec3): SurfaceHit | null;
	/** One step along the surface as seen from here, mm to the right and up; null while empty. */
	slide(from: SurfaceHit, right_mm: number, up_mm: number): SurfaceHit | null;
	/** Middle of the section at a height along a frame's normal (tooth frame); null where there is none. */
	middleAt(frame: PlaneFrame, height_mm: number): Vec3 | null;
	/**
	 * Takes off what lies above a cut and fills its face; null = whole. Holds for shapes shown later too. Shapes made in
	 * the browser, and teeth that the plane misses, stay whole.
	 */
	setCut(cut: Cut | null): void;
	/** The section at a cut, from every triangle; null while empty or where the plane misses the tooth. */
	sectionAt(cut: Cut): CutSection | null;
	/** Outermost surface in a direction seen from a point within; null where there is none. */
	outermost(from: Vec3, direction: Vec3): SurfaceHit | null;
	/** Where a point appears; null while empty. */
	project(point: Vec3, normal?: Vec3): PlaceInView | null;
	/** Pins whose places `pinPlaces` tells; the stage's `pose` event says when they may have changed. */
	setPins(pins: readonly Pin[]): void;
	/** Where the pins appear now, by id; empty while there is no shape. */
	pinPlaces(): ReadonlyMap<string, PlaceInView>;
	/**
	 * Taps of a mouse or finger (a touch that neither wandered nor lasted); null = beside the tooth. While anyone
	 * listens, a double tap does not set the tooth upright. Returns what ends the listening.
	 */
	onTap(listener: (hit: SurfaceHit | null) => void): () => void;
	readonly pose: Pose;
	/** CSS px per mm at the tooth's distance, for scale bars; null while empty */
	readonly pxPerMm: number | null;
	/** Removes the view and lets its shape go. */
	dispose(): void;
}

export interface StageStats {
	frames: number;
	/** median of the last moving frames, ms; null before any */
	movingMedian_ms: number | null;
	views: number;
	contexts: number;
	geometries: number;
	textures: number;
	triangles: number;
	/** render scale now in use, 1 = one sample per device pixel */
	quality: number;
	moving: boolean;
	/** the picture on screen is the one at rest quality: every triangle, antialiased, with cast shadows */
	full: boolean;
	contextLosses: number;
}

export interface StageOptions {
	/** at first; `Stage.setReducedMotion` changes it */
	reducedMotion: boolean;
	/** where a shape's address lies on this site; without it as it is */
	place?: (url: string) => string;
	/** called when WebGL goes away and comes back */
	onContext?: (state: 'lost' | 'restored') => void;
}

export interface StageEvents {
	/** after a frame in which a view's pose or scale changed: redraw scale bars */
	pose: () => void;
}

export interface Stage {
	/** Adds a view drawn where `element` stands; gestures on the element turn its tooth. */
	addView(element: HTMLElement): StageView;
	/** At first same-scale. Under same-scale zoom is one for all views, linked or not: a mm stays a mm everywhere. */
	/** `lifePxPerMm`: CSS px per mm of the glass, needed for life-size; without it that is same-scale. */
	setScaleMode(mode: ScaleMode, lifePxPerMm?: number | null): void;
	/** At first linked. Linking again eases all views to the pose of the one last touched. */
	setLinked(linked: boolean): void;
	/**
	 * Swings the key lamp of all views; out of range is clamped, see `Lamp`. Counts as moving. Cast shadows are drawn
	 * with full quality only. At first and by default DEFAULT_LAMP of ./lamp.
	 */
	setLamp(lamp: Lamp): void;
	readonly lamp: Lamp;
	/** From here on poses and sizes are taken at once and nothing glides on, or they move again. What moves comes to its end. */
	setReducedMotion(on: boolean): void;
	on<K extends keyof StageEvents>(event: K, listener: StageEvents[K]): () => void;
	/** Loads a shape into the cache without showing it. */
	preload(shape: ShapeRef): Promise<void>;
	/** Asks for one more frame; also when a view's element has moved without a resize or scroll (an animation). */
	invalidate(): void;
	/** Addresses of the prepared shapes that views show now. */
	shown(): string[];
	stats(): StageStats;
	/** Times between moving frames since this was last asked, ms; the last few hundred. */
	takeFrameTimes(): number[];
	dispose(): void;
}

/** Thrown by `createStage` where the browser has no WebGL2. */
export class NoWebGL extends Error {
	constructor() {
		super('createStage: this browser gives no WebGL2 context');
		this.name = 'NoWebGL';
	}
}

/** Signature of `createStage` in ./stage.ts */
export type CreateStage = (canvas: HTMLCanvasElement, options: StageOptions) => Stage;
