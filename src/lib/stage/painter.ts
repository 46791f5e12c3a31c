/** The only module that owns a WebGLRenderer: one context, many views, each drawn where its element stands. */
import {
	BufferAttribute,
	BufferGeometry,
	Camera,
	CustomBlending,
	Matrix4,
	Mesh,
	NearestFilter,
	NoBlending,
	OneMinusSrcAlphaFactor,
	PlaneGeometry,
	Scene,
	ShaderMaterial,
	SrcAlphaFactor,
	Vector2,
	Vector3,
	WebGLRenderTarget,
	WebGLRenderer,
} from 'three';
import { NoWebGL, type Pose, type ShapeRef } from './api';
import { intersection, nextCanvasBox } from './canvasBox';
import { CENTRE_POINTS } from './centreLine';
import { extents } from './fit';
import type { Step } from './governor';
import type { LoadedShape } from './loadShape';
import type { ToothMaterials } from './materials';
import { place, type Placement } from './placement';
import { COPY_FRAGMENT, COPY_VERTEX, SHADOW_FRAGMENT, SHADOW_VERTEX } from './shading.glsl';
import { frustum, viewRect, type Box } from './viewport';

export interface Picture {
	box: Box;
	shape: ShapeRef;
	loaded: LoadedShape;
	materials: ToothMaterials;
	pose: Pose;
	pxPerMm: number;
}

export interface Painter {
	/** Draws all pictures, moving the canvas to where they need it; what lies outside the window is skipped. */
	draw(pictures: readonly Picture[], step: Step, pixelRatio: number, moving: boolean): void;
	/** Makes the shaders now, so that the first tooth does not wait for them; they live as long as `materials`. */
	warm(materials: ToothMaterials): void;
	/** After a restored context: what the renderer cannot bring back by itself. */
	rebuild(): void;
	/** Resolves when the graphics side has finished what was asked of it so far, or the context is gone. */
	finished(): Promise<void>;
	readonly software: boolean;
	readonly figures: { geometries: number; textures: number; triangles: number };
	dispose(): void;
}

const SAMPLES = 4;
/** The antialiased buffer's sides are multiples of this, px, so that it is seldom made anew. */
const BUFFER_GRID = 64;

const isSoftware = (gl: WebGL2RenderingContext): boolean => {
	const info = gl.getExtension('WEBGL_debug_renderer_info');
	const name = String(gl.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : gl.RENDERER));
	return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
};

/** Throws NoWebGL where the canvas gives no WebGL2 context. */
export const createPainter = (canvas: HTMLCanvasElement): Painter => {
	const context = canvas.getContext('webgl2', {
		alpha: true,
		antialias: false,
		depth: true,
		stencil: false,
		premultipliedAlpha: true,
		powerPreference: 'high-performance',
	});
	if (!context) throw new NoWebGL();
	const renderer = new WebGLRenderer({ canvas, context, alpha: true, antialias: false });
	renderer.autoClear = false;
	renderer.info.autoReset = false;
	renderer.setPixelRatio(1);
	renderer.setClearColor(0x000000, 0);

	const camera = new Camera();
	const tooth = new Mesh(new BufferGeometry());
	tooth.matrixAutoUpdate = false;
	tooth.frustumCulled = false;
	const shadowMaterial = new ShaderMaterial({
		name: 'contact shadow',
		vertexShader: SHADOW_VERTEX,
		fragmentShader: SHADOW_FRAGMENT,
		uniforms: {
			chain: { value: Array.from({ length: CENTRE_POINTS }, () => new Vector3()) },
			blur: { value: 1 },
			strength: { value: 0.62 },
		},
		depthTest: false,
		depthWrite: false,
		blending: CustomBlending,
		blendSrc: SrcAlphaFactor,
		blendDst: OneMinusSrcAlphaFactor,
		toneMapped: false,
	});
	const shadow = new Mesh(new PlaneGeometry(1, 1), shadowMaterial);
	shadow.matrixAutoUpdate = false;
	shadow.frustumCulled = false;
	shadow.renderOrder = -1;
	const scene = new Scene();
	scene.add(tooth, shadow);

	const copyMaterial = new ShaderMaterial({
		name: 'copy',
		vertexShader: COPY_VERTEX,
		fragmentShader: COPY_FRAGMENT,
		uniforms: { map: { value: null }, corner: { value: new Vector2() } },
		blending: NoBlending,
		depthTest: false,
		depthWrite: false,
		toneMapped: false,
	});
	const cover = new BufferGeometry();
	cover.setAttribute('position', new BufferAttribute(new Float32Array([-1, -1, 0, 3, -1, 0, -1, 3, 0]), 3));
	const copy = new Mesh(cover, copyMaterial);
	copy.frustumCulled = false;
	const copyScene = new Scene();
	copyScene.add(copy);

	let target: WebGLRenderTarget | null = null;
	/** One antialiased buffer, large enough for the largest view; kept while it is not much too large. */
	const targetOf = (width: number, height: number): WebGLRenderTarget => {
		const small = target && (target.width < width || target.height < height);
		const large = target && target.width * target.height > 2 * (width + BUFFER_GRID) * (height + BUFFER_GRID);
		if (small || large) {
			target?.dispose();
			target = null;
		}
		const upTo = (size: number) => Math.ceil(size / BUFFER_GRID) * BUFFER_GRID;
		target ??= new WebGLRenderTarget(upTo(width), upTo(height), {
			samples: Math.min(SAMPLES, renderer.capabilities.maxSamples),
			minFilter: NearestFilter,
			magFilter: NearestFilter,
			generateMipmaps: false,
			stencilBuffer: false,
			resolveDepthBuffer: false,
		});
		return target;
	};

	const scaling = new Matrix4();

	/** Puts tooth, shadow and lens in place for one picture. */
	const arrange = (
		{ shape, loaded, materials, pxPerMm }: Picture,
		placement: Placement,
		lens: Box,
		full: boolean,
	) => {
		const f = frustum(lens, pxPerMm, extents(shape.bounds).radius_mm);
		camera.projectionMatrix.makePerspective(f.left, f.right, f.top, f.bottom, f.near, f.far);
		camera.projectionMatrixInverse.copy(camera.projectionMatrix).invert();
		tooth.geometry = full ? loaded.full : loaded.light;
		tooth.material = full ? materials.full : materials.light;
		tooth.matrix.makeTranslation(0, 0, -f.distance).multiply(placement.turn);
		tooth.matrixWorldNeedsUpdate = true;
		const { left, right, top, bottom } = placement.shadow;
		shadowMaterial.uniforms.chain.value = placement.chain;
		shadowMaterial.uniforms.blur.value = placement.blur_mm;
		shadow.matrix
			.makeTranslation((left + right) / 2, (top + bottom) / 2, -f.distance)
			.multiply(scaling.makeScale(right - left, top - bottom, 1));
		shadow.matrixWorldNeedsUpdate = true;
	};

	/** The canvas's place in the window now. */
	let box: Box | null = null;
	const fitCanvas = (needs: readonly Box[], moving: boolean): Box => {
		const all = { left: 0, top: 0, right: window.innerWidth, bottom: window.innerHeight };
		const next = nextCanvasBox(box, needs, all, moving) ?? { left: 0, top: 0, right: 1, bottom: 1 };
		if (
			!box ||
			next.left !== box.left ||
			next.top !== box.top ||
			next.right !== box.right ||
			next.bottom !== box.bottom
		) {
			canvas.style.left = `${next.left}px`;
			canvas.style.top = `${next.top}px`;
			canvas.style.width = `${next.right - next.left}px`;
			canvas.style.height = `${next.bottom - next.top}px`;
			box = next;
		}
		return next;
	};

	const gl = renderer.getContext() as WebGL2RenderingContext;
	const software = isSoftware(gl);

	return {
		draw(pictures, step, pixelRatio, moving) {
			const wanted = pictures.flatMap((picture) => {
				const { left, top, right, bottom } = picture.box;
				const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
				const placement = place(
					picture.shape.bounds,
					picture.loaded.centreLine,
					picture.pose,
					picture.pxPerMm,
				);
				const { need } = placement;
				const clip = intersection(picture.box, {
					left: middle.x + need.left,
					right: middle.x + need.right,
					top: middle.y + need.top,
					bottom: middle.y + need.bottom,
				});
				return clip ? [{ picture, placement, middle, clip }] : [];
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
			renderer.setRenderTarget(null);
			renderer.setScissorTest(false);
			renderer.clear();
			renderer.setScissorTest(true);
			const full = step.shading === 'full';
			const placed = wanted.flatMap(({ picture, placement, middle, clip }) => {
				const rect = viewRect(clip, middle, canvasBox, width, height);
				return rect ? [{ picture, placement, rect }] : [];
			});
			const room = full
				? targetOf(
						Math.max(1, ...placed.map(({ rect }) => rect.width)),
						Math.max(1, ...placed.map(({ rect }) => rect.height)),
					)
				: null;
			for (const { picture, placement, rect } of placed) {
				arrange(picture, placement, rect.lens, full);
				if (room) {
					room.viewport.set(0, 0, rect.width, rect.height);
					room.scissor.set(0, 0, rect.width, rect.height);
					room.scissorTest = true;
					renderer.setRenderTarget(room);
					renderer.clear();
					renderer.render(scene, camera);
					renderer.setRenderTarget(null);
					copyMaterial.uniforms.map.value = room.texture;
					(copyMaterial.uniforms.corner.value as Vector2).set(rect.x, rect.y);
				}
				renderer.setViewport(rect.x, rect.y, rect.width, rect.height);
				renderer.setScissor(rect.x, rect.y, rect.width, rect.height);
				renderer.render(room ? copyScene : scene, camera);
			}
		},
		warm(materials) {
			for (const material of [materials.light, materials.full]) {
				tooth.material = material;
				renderer.compile(scene, camera);
			}
			renderer.compile(copyScene, camera);
		},
		rebuild() {
			target?.dispose();
			target = null;
		},
		finished: () =>
			new Promise((resolve) => {
				const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
				gl.flush();
				const look = () => {
					if (!fence || gl.isContextLost()) return resolve();
					if (gl.clientWaitSync(fence, 0, 0) === gl.TIMEOUT_EXPIRED) return void setTimeout(look, 4);
					gl.deleteSync(fence);
					resolve();
				};
				look();
			}),
		software,
		get figures() {
			const { memory, render } = renderer.info;
			return { geometries: memory.geometries, textures: memory.textures, triangles: render.triangles };
		},
		dispose() {
			target?.dispose();
			shadow.geometry.dispose();
			cover.dispose();
			shadowMaterial.dispose();
			copyMaterial.dispose();
			renderer.dispose();
			renderer.forceContextLoss();
		},
	};
};
