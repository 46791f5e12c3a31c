/**
 * What the rest of the app may ask of the stage. Nothing here imports three.js, so that pages can
 * be typed against it while the stage itself is loaded later, in the background.
 */
import type { Preservation } from '../content/exhibit';

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

/** same-scale: one mm is one mm in every view; same-height: every crown is drawn equally tall */
export type ScaleMode = 'same-scale' | 'same-height';

/** Where a view's tooth is turned to; yaw about its long axis, tilt towards the viewer, both degrees. */
export interface Pose {
	yaw_deg: number;
	tilt_deg: number;
	zoom: number;
}

export interface StageView {
	/** Shows a shape, replacing the last; resolves when its first frame has been drawn. `null` empties the view. */
	show(shape: ShapeRef | null): Promise<void>;
	/** Turns by degrees (buttons and keys); with linked views all turn. */
	turnBy(yaw_deg: number, tilt_deg: number): void;
	zoomBy(factor: number): void;
	reset(): void;
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
	contextLosses: number;
}

export interface StageOptions {
	reducedMotion: boolean;
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
	setScaleMode(mode: ScaleMode): void;
	/** At first linked. Linking again eases all views to the pose of the one last touched. */
	setLinked(linked: boolean): void;
	on<K extends keyof StageEvents>(event: K, listener: StageEvents[K]): () => void;
	/** Loads a shape into the cache without showing it. */
	preload(shape: ShapeRef): Promise<void>;
	/** Asks for one more frame; also when a view's element has moved without a resize or scroll (an animation). */
	invalidate(): void;
	stats(): StageStats;
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
