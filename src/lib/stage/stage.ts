/**
 * The stage: one canvas behind the page, one renderer and one context for the page's life, and as many views as
 * there are elements to draw in. Draws only when something has changed.
 *
 * Loop: every mutator marks a change with the governor and wakes the loop; each tick asks the governor whether to
 * draw at moving quality, at rest quality, to wait, or to stop ticking.
 */
import type {
	CreateStage,
	Cut,
	Lamp,
	PlaceInView,
	Pose,
	ScaleMode,
	Stage,
	StageEvents,
	StageOptions,
	StageStats,
	StageView,
	SurfaceHit,
} from './api';
import { vec3, type Vec3 } from '../domain/vec3';
import { fitViews } from './fit';
import { attachGestures } from './gestures';
import { createGovernor } from './governor';
import {
	advance,
	createHandledView,
	easeTo,
	endMotion,
	heading,
	setFit,
	shownPxPerMm,
	type HandledView,
} from './handledView';
import { loadShape, parkShape } from './loadShape';
import { cleanLamp, DEFAULT_LAMP } from './lamp';
import { createToothMaterials } from './materials';
import { createPainter } from './painter';
import { ShownParts } from './shownParts';
import { paintedOf, pickPart, surfaceOf } from './viewSurface';
import { eyeOf, facing, lensOf, placeInView, rayAt, stepAlong, type Lens } from './pins';
import { createPool } from './pool';
import { cappedSpeed, DEFAULT_POSE, degreesPerPx, turned, zoomed } from './pose';
import { quarterTurned, standingBounds } from './stand';
import { cutterOf } from './tools/cutter';
import { ViewCut } from './tools/viewCut';
import { MAX_PIXEL_RATIO, RESTORE_WAIT_ms } from './thresholds';

/** shapes that nobody shows but that stay in main memory, ready to be shown again */
const KEEP_SHAPES = 8;

/** A pin that lies this share of the eye's distance under the surface still counts as on it. */
const PIN_SLACK = 0.002;

/** What a test may put in the place of the browser. */
export interface StageSurroundings {
	/** called when a lost context does not come back */
	reload: () => void;
}

/** As `CreateStage` in api.ts; throws NoWebGL where the browser gives no WebGL2 context. */
export const createStage = (
	canvas: HTMLCanvasElement,
	options: StageOptions,
	surroundings: StageSurroundings = { reload: () => location.reload() },
): Stage => {
	const painter = createPainter(canvas);
	Object.assign(canvas.style, { position: 'fixed', right: 'auto', bottom: 'auto', pointerEvents: 'none' });

	const now = () => performance.now();
	const pixelRatio = () => Math.min(MAX_PIXEL_RATIO, window.devicePixelRatio || 1);
	const governor = createGovernor({
		software: painter.software,
		now,
		pixels: window.innerWidth * window.innerHeight * pixelRatio() ** 2,
	});
	const pool = createPool({
		load: (url) => loadShape(options.place?.(url) ?? url),
		park: parkShape,
		keep: KEEP_SHAPES,
	});
	// keeps the shaders alive between rooms, when no view is there
	const spareMaterials = createToothMaterials();
	painter.warm(spareMaterials);

	const views: HandledView[] = [];
	const listeners: { [K in keyof StageEvents]: Set<StageEvents[K]> } = { pose: new Set() };
	let lamp: Lamp = { ...DEFAULT_LAMP };
	let full = false;
	let scaleMode: ScaleMode = 'same-scale';
	let lifePxPerMm: number | null = null;
	let linked = true;
	let reducedMotion = options.reducedMotion;
	let lost = false;
	let losses = 0;
	let frames = 0;
	let ticking = 0;
	let relayout = true;
	let poseChanged = false;
	let lastTouched: HandledView | null = null;
	let reloadTimer: ReturnType<typeof setTimeout> | undefined;
	let gone = false;

	const wake = () => {
		if (!ticking && !lost && !gone) ticking = requestAnimationFrame(tick);
	};
	const moved = () => {
		poseChanged = true;
		governor.moved();
		wake();
	};
	const once = () => {
		governor.changed();
		wake();
	};

	/** Sizes all views to each other. `jump` lists views whose size is set at once (a new shape has no old size). */
	const refit = (atOnce: boolean, jump?: HandledView) => {
		const fits = fitViews(
			views.map((v) =>
				v.shape
					? {
							width_px: v.element.clientWidth,
							height_px: v.element.clientHeight,
							bounds: standingBounds(v.shape.bounds, heading(v).stand),
							crownHeight_mm: v.shape.crownHeight_mm,
						}
					: null,
			),
			scaleMode,
			lifePxPerMm,
		);
		views.forEach((v, i) => {
			if (setFit(v, fits[i], now(), atOnce || reducedMotion || v === jump)) poseChanged = true;
		});
	};

	const draw = (plan: 'moving' | 'rest') => {
		const step = plan === 'moving' ? governor.step : governor.rest;
		const started = now();
		painter.draw(
			views.flatMap((view) => {
				const pxPerMm = shownPxPerMm(view, started);
				if (!view.shape || pxPerMm === null) return [];
				const box = view.element.getBoundingClientRect();
				const { pose } = view;
				return [{ box, bounds: view.shape.bounds, ...paintedOf(view), cut: view.cut, pose, pxPerMm }];
			}),
			lamp,
			step,
			pixelRatio(),
			plan === 'moving',
		);
		frames++;
		full = step.shading === 'full' && step.scale >= governor.rest.scale;
		governor.drawn(plan);
		if (plan === 'rest') {
			void painter.finished().then(() => {
				governor.restTook(now() - started);
			});
		}
		for (const view of views) for (const done of view.waiting.splice(0)) done();
		if (!poseChanged) return;
		poseChanged = false;
		for (const listener of listeners.pose) listener();
	};

	const tick = () => {
		ticking = 0;
		if (lost || gone) return;
		if (relayout) {
			relayout = false;
			refit(true);
		}
		for (const view of views) if (advance(view, now())) moved();
		const plan = governor.plan();
		if (plan === 'moving' || plan === 'rest') draw(plan);
		if (!governor.settled) wake();
	};

	/** The views that go with this one: all when linked. */
	const together = (view: HandledView) => (linked ? views : [view]);
	/** Zoom is shared wherever sizes are meant to be compared. */
	const zoomTogether = (view: HandledView) =>
		linked || (scaleMode !== 'same-height' && scaleMode !== 'each-fits') ? views : [view];
	/** Every pose but at life size may be nearer or farther. */
	const sized = (pose: Pose): Pose => (scaleMode === 'life-size' ? { ...pose, zoom: 1 } : pose);

	const turnNow = (view: HandledView, yaw_deg: number, tilt_deg: number) => {
		lastTouched = view;
		for (const v of together(view)) {
			v.ease = null;
			v.glide = null;
			v.pose = turned(v.pose, yaw_deg, tilt_deg);
		}
		moved();
	};
	const zoomNow = (view: HandledView, factor: number) => {
		if (scaleMode === 'life-size') return;
		lastTouched = view;
		const { zoom } = zoomed(heading(view), factor);
		for (const v of zoomTogether(view)) {
			if (v.ease) v.pose = { ...v.ease.to };
			v.ease = null;
			v.pose = { ...v.pose, zoom };
		}
		moved();
	};
	const resetNow = (view: HandledView) => {
		lastTouched = view;
		for (const v of together(view)) easeTo(v, { ...DEFAULT_POSE }, now(), reducedMotion);
		for (const v of zoomTogether(view)) {
			if (!together(view).includes(v)) easeTo(v, { ...heading(v), zoom: 1 }, now(), reducedMotion);
		}
		refit(false);
		moved();
	};
	/** Each view that goes with this one eases to a pose of its own. */
	const easeEach = (view: HandledView, to: (v: HandledView) => Pose) => {
		lastTouched = view;
		for (const v of together(view)) easeTo(v, sized(to(v)), now(), reducedMotion);
		const { zoom } = heading(view);
		for (const v of zoomTogether(view)) {
			if (!together(view).includes(v)) easeTo(v, { ...heading(v), zoom }, now(), reducedMotion);
		}
		refit(false);
		moved();
	};
	const flickNow = (view: HandledView, yaw_per_ms: number, tilt_per_ms: number) => {
		if (reducedMotion) return;
		const { yaw, tilt } = cappedSpeed(yaw_per_ms, tilt_per_ms);
		for (const v of together(view)) v.glide = { from: v.pose, yaw, tilt, since_ms: now() };
		moved();
	};
	const grabNow = (view: HandledView) => {
		lastTouched = view;
		for (const v of together(view)) {
			v.glide = null;
			v.ease = null;
		}
	};
	/** All views to the pose of the one last touched, or only to its zoom. */
	const gather = (zoomOnly: boolean) => {
		const lead = lastTouched ?? views[0];
		if (!lead) return;
		const to = heading(lead);
		for (const v of views) {
			if (v !== lead)
				easeTo(v, zoomOnly ? { ...heading(v), zoom: to.zoom } : { ...to }, now(), reducedMotion);
		}
		moved();
	};

	const layoutChanged = () => {
		relayout = true;
		moved();
	};
	const resizeObserver = new ResizeObserver(layoutChanged);
	window.addEventListener('resize', layoutChanged);
	window.addEventListener('scroll', layoutChanged, { capture: true, passive: true });

	const onLost = (event: Event) => {
		event.preventDefault();
		if (gone) return;
		lost = true;
		losses++;
		full = false;
		painter.forget();
		cancelAnimationFrame(ticking);
		ticking = 0;
		clearTimeout(reloadTimer);
		reloadTimer = setTimeout(() => surroundings.reload(), RESTORE_WAIT_ms);
		options.onContext?.('lost');
	};
	const onRestored = () => {
		if (gone) return;
		lost = false;
		clearTimeout(reloadTimer);
		once();
		options.onContext?.('restored');
	};
	canvas.addEventListener('webglcontextlost', onLost);
	canvas.addEventListener('webglcontextrestored', onRestored);

	const addView = (element: HTMLElement): StageView => {
		const view = createHandledView(element, createToothMaterials());
		const companion = views.find((v) => v.shape);
		if (linked && companion) view.pose = { ...heading(companion) };
		else if (companion && scaleMode === 'same-scale') view.pose = { ...view.pose, zoom: companion.pose.zoom };
		views.push(view);
		resizeObserver.observe(element);
		const perPx = () => degreesPerPx(element.clientWidth, element.clientHeight, view.pose.zoom);
		const detach = attachGestures(element, {
			grab: () => grabNow(view),
			drag: (dx, dy) => turnNow(view, dx * perPx(), dy * perPx()),
			flick: (vx, vy) => flickNow(view, vx * perPx(), vy * perPx()),
			zoom: (factor) => zoomNow(view, factor),
			reset: () => resetNow(view),
			tap: (x, y) => {
				if (view.tapListeners.size === 0) return false;
				const hit = pickAt(x, y);
				for (const listener of [...view.tapListeners]) listener(hit);
				return true;
			},
		});
		const picker = () => surfaceOf(view);
		/** The picture as it stands now. */
		const lens = (): Lens | null => {
			const pxPerMm = shownPxPerMm(view, now());
			if (!view.shape || pxPerMm === null) return null;
			return lensOf(view.shape.bounds, view.pose, pxPerMm, element.clientWidth, element.clientHeight);
		};
		const pickAt = (clientX: number, clientY: number): SurfaceHit | null => {
			const through = lens();
			const box = element.getBoundingClientRect();
			if (!through) return null;
			const hit = pickPart(view, rayAt(through, clientX - box.left, clientY - box.top));
			// what is cut off cannot be touched
			return hit && view.cut && hit.point[1] > view.cut.height_mm ? null : hit;
		};
		const project = (point: Vec3, normal?: Vec3): PlaceInView | null => {
			const through = lens();
			const place = through && placeInView(through, point);
			if (!through || !place) return null;
			const eye = eyeOf(through);
			const away = normal !== undefined && vec3.dot(normal, vec3.subtract(eye, point)) < 0;
			const slack_mm = PIN_SLACK * through.distance_mm;
			return { ...place, behind: away || !(picker()?.open(point, eye, slack_mm) ?? true) };
		};
		const heightOf = (cut: Cut): number =>
			'height_mm' in cut ? cut.height_mm : cut.fraction * (view.shape?.crownHeight_mm ?? 0);
		/** Lays the cut that was asked for through the tooth that is shown. */
		const cutNow = () => {
			view.cut?.dispose();
			view.cut = null;
			if (!view.cutAsked || !view.loan) return;
			const cut = new ViewCut(view.loan.resource, heightOf(view.cutAsked), view.materials);
			if (cut.meets) view.cut = cut;
		};
		const drop = () => {
			view.cut?.dispose();
			view.cut = null;
			view.loan?.release();
			view.parts?.dispose();
			view.loan = null;
			view.parts = null;
			view.shape = null;
		};
		/** Resolves when the next frame has been drawn. */
		const firstFrame = () => {
			refit(false, view);
			poseChanged = true;
			const drawn = new Promise<void>((resolve) => view.waiting.push(resolve));
			moved();
			return drawn;
		};
		const isHere = () => views.includes(view);

		return {
			async show(shape) {
				const asked = ++view.asked;
				if (shape === null) {
					drop();
				} else {
					const loan = await pool.borrow(shape.url);
					if (asked !== view.asked || !isHere()) return loan.release();
					drop();
					view.loan = loan;
					view.shape = shape;
					view.materials.dress(shape.preservation, shape.crownHeight_mm, loan.resource.closed);
					cutNow();
				}
				return firstFrame();
			},
			async showMesh(shape) {
				view.asked++;
				if (!isHere()) return;
				if (view.parts) view.parts.update(shape);
				else {
					drop();
					view.parts = new ShownParts(shape);
				}
				view.shape = shape;
				return firstFrame();
			},
			updateMesh(shape) {
				if (!view.parts) return;
				view.parts.update(shape);
				const before = view.shape;
				view.shape = shape;
				if (JSON.stringify(before?.bounds) !== JSON.stringify(shape.bounds)) refit(false);
				poseChanged = true;
				moved();
			},
			turnBy: (yaw_deg, tilt_deg) => turnNow(view, yaw_deg, tilt_deg),
			zoomBy: (factor) => zoomNow(view, factor),
			reset: () => resetNow(view),
			turnTo: (to) => easeEach(view, (v) => ({ ...heading(v), ...to })),
			lookAlong: (direction) => easeEach(view, (v) => facing(heading(v), direction)),
			quarterTurn: (turn) => easeEach(view, (v) => quarterTurned(heading(v), turn)),
			pickAt,
			snap: (point) => picker()?.nearest(point) ?? null,
			slide(from, right_mm, up_mm) {
				const through = lens();
				if (!through) return null;
				const to = stepAlong(through, from.point, from.normal, right_mm, up_mm);
				return picker()?.nearest(to) ?? null;
			},
			middleAt: (frame, height_mm) => picker()?.middleAt(frame, height_mm) ?? null,
			setCut(cut) {
				if (JSON.stringify(cut) === JSON.stringify(view.cutAsked)) return;
				view.cutAsked = cut;
				cutNow();
				moved();
			},
			sectionAt: (cut) => view.loan && cutterOf(view.loan.resource.full)(heightOf(cut)),
			outermost: (from, direction) => picker()?.outermost(from, direction) ?? null,
			project,
			setPins(pins) {
				view.pins = pins;
				poseChanged = true;
				once();
			},
			pinPlaces() {
				const places = new Map<string, PlaceInView>();
				for (const { id, point, normal } of view.pins) {
					const place = project(point, normal);
					if (place) places.set(id, place);
				}
				return places;
			},
			onTap(listener) {
				view.tapListeners.add(listener);
				return () => view.tapListeners.delete(listener);
			},
			get pose(): Pose {
				return { ...view.pose };
			},
			get pxPerMm() {
				return shownPxPerMm(view, now());
			},
			dispose() {
				if (!isHere()) return;
				detach();
				resizeObserver.unobserve(element);
				view.asked++;
				drop();
				views.splice(views.indexOf(view), 1);
				if (lastTouched === view) lastTouched = null;
				for (const done of view.waiting.splice(0)) done();
				view.materials.dispose();
				refit(false);
				once();
			},
		};
	};

	const stats = (): StageStats => ({
		frames,
		movingMedian_ms: governor.median_ms,
		views: views.length,
		contexts: gone || lost ? 0 : 1,
		...painter.figures,
		quality: governor.moving ? governor.step.scale : governor.rest.scale,
		moving: governor.moving,
		full,
		contextLosses: losses,
	});

	return {
		addView,
		setScaleMode(mode, life = null) {
			if (mode === scaleMode && life === lifePxPerMm) return;
			scaleMode = mode;
			lifePxPerMm = life;
			refit(false);
			if (mode === 'same-scale') gather(true);
			if (mode === 'life-size') for (const v of views) easeTo(v, sized(heading(v)), now(), reducedMotion);
			moved();
		},
		setLinked(on) {
			if (on === linked) return;
			linked = on;
			if (on) gather(false);
		},
		setLamp(wanted) {
			const next = cleanLamp(wanted);
			if (next.azimuth_deg === lamp.azimuth_deg && next.elevation_deg === lamp.elevation_deg) return;
			lamp = next;
			moved();
		},
		get lamp() {
			return { ...lamp };
		},
		setReducedMotion(on) {
			if (on === reducedMotion) return;
			reducedMotion = on;
			if (on && views.map((view) => endMotion(view)).some(Boolean)) moved();
		},
		on(event, listener) {
			listeners[event].add(listener);
			return () => listeners[event].delete(listener);
		},
		preload: (shape) => pool.preload(shape.url),
		invalidate: once,
		shown: () =>
			views.flatMap(({ loan, shape }) => (loan && shape && 'url' in shape ? [String(shape.url)] : [])),
		stats,
		takeFrameTimes: () => governor.takeTimes(),
		dispose() {
			if (gone) return;
			gone = true;
			cancelAnimationFrame(ticking);
			clearTimeout(reloadTimer);
			resizeObserver.disconnect();
			window.removeEventListener('resize', layoutChanged);
			window.removeEventListener('scroll', layoutChanged, { capture: true });
			canvas.removeEventListener('webglcontextlost', onLost);
			canvas.removeEventListener('webglcontextrestored', onRestored);
			for (const view of views) {
				for (const done of view.waiting.splice(0)) done();
				view.cut?.dispose();
				view.loan?.release();
				view.parts?.dispose();
				view.materials.dispose();
			}
			views.length = 0;
			spareMaterials.dispose();
			pool.clear();
			painter.dispose();
		},
	} satisfies Stage;
};

createStage satisfies CreateStage;
