/** The only module that owns a WebGLRenderer: one context, many views, each drawn where its element stands. */
import { BufferGeometry, Camera, Matrix4, Mesh, Scene, WebGLRenderer, type WebGLRenderTarget } from 'three';
import { NoWebGL, type Lamp, type Pose, type ShapeRef } from './api';
import { intersection, nextCanvasBox } from './canvasBox';
import { extents } from './fit';
import type { Step } from './governor';
import { lampFrame } from './lamp';
import { createCaster } from './lampCast';
import type { CentreLine } from './centreLine';
import type { ToothMaterials } from './materials';
import { createCopyPass, createSampledBuffer, createShadowPass, createVeil } from './passes';
import { place, type Placement } from './placement';
import type { PaintedPart } from './shownParts';
import { createCapPass } from './tools/capPass';
import { cutLine } from './tools/cutLine';
import { cutProjection } from './tools/cutProjection';
import type { ViewCut } from './tools/viewCut';
import { frustum, viewRect, type Box, type ViewRect } from './viewport';

export interface Picture {
	/** where the view's element stands, CSS px of the window */
	box: Box;
	bounds: ShapeRef['bounds'];
	parts: readonly PaintedPart[];
	/** what the shadow on the felt is made of; null for none */
	centreLine: CentreLine | null;
	/** what lies above it is taken off; null = whole */
	cut: ViewCut | null;
	pose: Pose;
	pxPerMm: number;
}

export interface Painter {
	/** Draws all pictures, moving the canvas to where they need it; what lies outside the window is skipped. */
	draw(pictures: readonly Picture[], lamp: Lamp, step: Step, pixelRatio: number, moving: boolean): void;
	/** Makes the shaders now, so that the first tooth does not wait for them; they live as long as `materials`. */
	warm(materials: ToothMaterials): void;
	/** When the context is lost: lets go of what the renderer cannot bring back; it is made anew when next needed. */
	forget(): void;
	/** Resolves when the graphics side has finished what was asked of it so far, or the context is gone. */
	finished(): Promise<void>;
	readonly software: boolean;
	readonly figures: { geometries: number; textures: number; triangles: number };
	dispose(): void;
}

interface Job {
	picture: Picture;
	placement: Placement;
	/** tooth and shadow */
	whole: ViewRect;
	/** the tooth alone; null when only its shadow shows */
	own: ViewRect | null;
}

const isSoftware = (gl: WebGL2RenderingContext): boolean => {
	const info = gl.getExtension('WEBGL_debug_renderer_info');
	const name = String(gl.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : gl.RENDERER));
	return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
};

const same = (a: Box | null, b: Box): boolean =>
	a !== null && a.left === b.left && a.top === b.top && a.right === b.right && a.bottom === b.bottom;

/** Throws NoWebGL where the canvas gives no WebGL2 context. */
export const createPainter = (canvas: HTMLCanvasElement): Painter => {
	const gl = canvas.getContext('webgl2', {
		alpha: true,
		antialias: false,
		depth: true,
		stencil: false,
		premultipliedAlpha: true,
		powerPreference: 'high-performance',
	});
	if (!gl) throw new NoWebGL();
	const software = isSoftware(gl);
	const renderer = new WebGLRenderer({ canvas, context: gl, alpha: true, antialias: false });
	renderer.autoClear = false;
	renderer.info.autoReset = false;
	renderer.setPixelRatio(1);
	renderer.setClearColor(0x000000, 0);

	const camera = new Camera();
	const toothScene = new Scene();
	const empty = new BufferGeometry();
	const bodies: Mesh[] = [];
	/** One of the meshes that parts are drawn with, made when first needed. */
	const body = (index: number): Mesh => {
		if (bodies[index]) return bodies[index];
		const made = new Mesh(empty);
		made.matrixAutoUpdate = false;
		made.frustumCulled = false;
		toothScene.add(made);
		bodies[index] = made;
		return made;
	};
	body(0);
	const veil = createVeil();
	const shadow = createShadowPass();
	const copy = createCopyPass();
	const caps = createCapPass();
	const caster = createCaster(renderer);
	const buffer = createSampledBuffer(renderer.capabilities.maxSamples);

	/** The canvas's place in the window now. */
	let placed: Box | null = null;
	const fitCanvas = (needs: readonly Box[], moving: boolean): Box => {
		const all = { left: 0, top: 0, right: window.innerWidth, bottom: window.innerHeight };
		const next = nextCanvasBox(placed, needs, all, moving) ?? { left: 0, top: 0, right: 1, bottom: 1 };
		if (!same(placed, next)) {
			canvas.style.left = `${next.left}px`;
			canvas.style.top = `${next.top}px`;
			canvas.style.width = `${next.right - next.left}px`;
			canvas.style.height = `${next.bottom - next.top}px`;
			placed = next;
		}
		return next;
	};

	/** Turns the lens to what `rect` must show; returns how far away the tooth stands, mm. */
	const look = ({ bounds, pxPerMm }: Picture, rect: ViewRect): number => {
		const f = frustum(rect.lens, pxPerMm, extents(bounds).radius_mm);
		camera.projectionMatrix.makePerspective(f.left, f.right, f.top, f.bottom, f.near, f.far);
		camera.projectionMatrixInverse.copy(camera.projectionMatrix).invert();
		return f.distance;
	};

	const onCanvas = ({ x, y, width, height }: ViewRect) => {
		renderer.setViewport(x, y, width, height);
		renderer.setScissor(x, y, width, height);
	};

	/** Draws one view; with a `room` at full quality by way of it, without one lightly and straight. */
	const paint = ({ picture, placement, whole, own }: Job, lamp: Lamp, room: WebGLRenderTarget | null) => {
		const { parts, bounds, box, pxPerMm, cut } = picture;
		const distance = look(picture, whole);
		if (placement.chain.length > 0) {
			shadow.set(placement, distance, (box.right - box.left) / pxPerMm, (box.bottom - box.top) / pxPerMm);
			onCanvas(whole);
			renderer.render(shadow.scene, camera);
		}
		if (!own) return;
		const casting = parts
			.filter(({ opacity }) => opacity === 1)
			.map(({ loaded, place }) => ({ geometry: loaded.full, closed: loaded.closed, place }));
		const cast = room && caster.cast(casting, bounds, placement.turn, lamp, cut?.height_mm);
		const stand = new Matrix4().makeTranslation(0, 0, -distance).multiply(placement.turn);
		let used = 0;
		const put = ({ loaded, place }: PaintedPart, material: Mesh['material'], order: number) => {
			const mesh = body(used++);
			mesh.visible = true;
			mesh.geometry = room ? loaded.full : loaded.light;
			mesh.material = material;
			mesh.renderOrder = order;
			mesh.matrix.copy(stand);
			if (place) mesh.matrix.multiply(place);
			mesh.matrixWorldNeedsUpdate = true;
		};
		parts.forEach((part, i) => {
			part.materials.illuminate(lamp, cast, part.place);
			const seeThrough = part.opacity < 1;
			// solid parts first; of each see-through one its depth, then its surface
			if (seeThrough) put(part, veil, 1 + 2 * i);
			put(part, room ? part.materials.full : part.materials.light, seeThrough ? 2 + 2 * i : 0);
		});
		for (const mesh of bodies.slice(used)) mesh.visible = false;
		const pieces = () => {
			look(picture, own);
			if (!cut) return renderer.render(toothScene, camera);
			const facing = cutProjection(camera.projectionMatrix, stand, cut.height_mm, bounds);
			renderer.render(toothScene, camera);
			if (!facing) return;
			caps.set(cut, room ? 'full' : 'light', stand, lamp);
			look(picture, own);
			renderer.render(caps.scene, camera);
			caps.clear();
		};
		if (!room) {
			onCanvas(own);
			pieces();
			return;
		}
		room.viewport.set(0, 0, own.width, own.height);
		room.scissor.set(0, 0, own.width, own.height);
		room.scissorTest = true;
		renderer.setRenderTarget(room);
		renderer.clear();
		pieces();
		renderer.setRenderTarget(null);
		copy.set(room.texture, own.x, own.y);
		onCanvas(own);
		renderer.render(copy.scene, camera);
	};

	return {
		draw(pictures, lamp, step, pixelRatio, moving) {
			const { dir } = lampFrame(lamp);
			const wanted = pictures.flatMap((picture) => {
				const { box, bounds, pose, pxPerMm, cut } = picture;
				const centreLine =
					cut && picture.centreLine ? cutLine(picture.centreLine, cut.height_mm) : picture.centreLine;
				const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
				const placement = place(bounds, centreLine, pose, pxPerMm, dir);
				const clipped = (part: Box) =>
					intersection(box, {
						left: middle.x + part.left,
						right: middle.x + part.right,
						top: middle.y + part.top,
						bottom: middle.y + part.bottom,
					});
				const clip = clipped(placement.need);
				return clip ? [{ picture, placement, middle, clip, own: clipped(placement.tooth) }] : [];
			});
			const canvasBox = fitCanvas(
				wanted.map(({ clip }) => clip),
				moving,
			);
			const ratio = pixelRatio * step.scale;
			const width = Math.max(1, Math.round((canvasBox.right - canvasBox.left) * ratio));
			const height = Math.max(1, Math.round((canvasBox.bottom - canvasBox.top) * ratio));
			if (canvas.width !== width || canvas.height !== height) renderer.setSize(width, height, false);
			renderer.info.reset();
			// a restored context clears to opaque black until it is told again
			renderer.setClearColor(0x000000, 0);
			renderer.setRenderTarget(null);
			renderer.setScissorTest(false);
			renderer.clear();
			renderer.setScissorTest(true);
			const jobs = wanted.flatMap(({ picture, placement, middle, clip, own }) => {
				const rect = (part: Box | null) => part && viewRect(part, middle, canvasBox, width, height);
				const whole = rect(clip);
				return whole ? [{ picture, placement, whole, own: rect(own) }] : [];
			});
			const largest = (side: 'width' | 'height') => Math.max(1, ...jobs.map(({ own }) => own?.[side] ?? 1));
			const room = step.shading === 'full' ? buffer.atLeast(largest('width'), largest('height')) : null;
			for (const job of jobs) paint(job, lamp, room);
			// what was drawn may be let go of: nothing here may hold it
			for (const mesh of bodies) mesh.geometry = empty;
		},
		warm(materials) {
			for (const material of [materials.light, materials.full]) {
				body(0).material = material;
				renderer.compile(toothScene, camera);
			}
			renderer.compile(shadow.scene, camera);
			renderer.compile(copy.scene, camera);
			renderer.compile(caps.scene, camera);
			caster.warm();
		},
		forget() {
			buffer.drop();
			caster.drop();
		},
		finished: () =>
			new Promise((resolve) => {
				const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
				gl.flush();
				const ask = () => {
					if (!fence || gl.isContextLost()) return resolve();
					if (gl.clientWaitSync(fence, 0, 0) === gl.TIMEOUT_EXPIRED) return void setTimeout(ask, 4);
					gl.deleteSync(fence);
					resolve();
				};
				ask();
			}),
		software,
		get figures() {
			const { memory, render } = renderer.info;
			return { geometries: memory.geometries, textures: memory.textures, triangles: render.triangles };
		},
		dispose() {
			buffer.drop();
			caster.dispose();
			shadow.dispose();
			copy.dispose();
			veil.dispose();
			caps.dispose();
			renderer.dispose();
			renderer.forceContextLoss();
		},
	};
};
