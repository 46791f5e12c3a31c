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
import { CENTRE_POINTS } from './centreLine';
import { extents } from './fit';
import type { Step } from './governor';
import type { LoadedShape } from './loadShape';
import type { ToothMaterials } from './materials';
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
	/** Draws all pictures; those outside the canvas are skipped. */
	draw(pictures: readonly Picture[], step: Step, pixelRatio: number): void;
	/** Makes the shaders now, so that the first tooth does not wait for them; they live as long as `materials`. */
	warm(materials: ToothMaterials): void;
	/** After a restored context: what the renderer cannot bring back by itself. */
	rebuild(): void;
	/** Resolves when the graphics side has finished what was asked of it so far, or the context is gone. */
	finished(): Promise<void>;
	readonly software: boolean;
	readonly figures: { geometries: number; textures: number; triangles: number };
	/** Canvas pixels at scale 1. */
	pixels(pixelRatio: number): number;
	dispose(): void;
}

const SAMPLES = 4;
/** From the tooth towards the lamp; must match KEY_DIR in shading.glsl.ts. */
const LAMP = new Vector3(-0.64, 0.512, 0.573);

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
	const targetOf = (width: number, height: number): WebGLRenderTarget => {
		if (target && (target.width !== width || target.height !== height)) {
			target.dispose();
			target = null;
		}
		target ??= new WebGLRenderTarget(width, height, {
			samples: Math.min(SAMPLES, renderer.capabilities.maxSamples),
			minFilter: NearestFilter,
			magFilter: NearestFilter,
			generateMipmaps: false,
			stencilBuffer: false,
			resolveDepthBuffer: false,
		});
		return target;
	};

	const turn = new Matrix4();
	const step1 = new Matrix4();
	const point = new Vector3();

	/** Puts tooth, shadow and lens in place for one picture. */
	const arrange = (picture: Picture, lens: Box, full: boolean) => {
		const { shape, loaded, pose } = picture;
		const { min, max } = shape.bounds;
		const { radius_mm } = extents(shape.bounds);
		const f = frustum(lens, picture.pxPerMm, radius_mm);
		camera.projectionMatrix.makePerspective(f.left, f.right, f.top, f.bottom, f.near, f.far);
		camera.projectionMatrixInverse.copy(camera.projectionMatrix).invert();
		turn
			.makeRotationX((pose.tilt_deg * Math.PI) / 180)
			.multiply(step1.makeRotationY((pose.yaw_deg * Math.PI) / 180));
		turn.multiply(
			step1.makeTranslation(-(min[0] + max[0]) / 2, -(min[1] + max[1]) / 2, -(min[2] + max[2]) / 2),
		);
		tooth.geometry = full ? loaded.full : loaded.light;
		tooth.material = full ? picture.materials.full : picture.materials.light;
		tooth.matrix.makeTranslation(0, 0, -f.distance).multiply(turn);
		tooth.matrixWorldNeedsUpdate = true;

		const chain = shadowMaterial.uniforms.chain.value as Vector3[];
		const { points } = loaded.centreLine;
		let widest = 0;
		for (let i = 0; i < CENTRE_POINTS; i++) widest = Math.max(widest, points[i * 4 + 3]);
		let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
		for (let i = 0; i < CENTRE_POINTS; i++) {
			const r = points[i * 4 + 3];
			point.fromArray(points, i * 4).applyMatrix4(turn);
			// where the lamp's ray through this point meets the felt behind the tooth
			const drop = Math.max(0.2 * widest, point.z * 0.35 + 1.15 * widest);
			chain[i].set(
				point.x - (LAMP.x / LAMP.z) * drop * 0.62,
				point.y - (LAMP.y / LAMP.z) * drop * 0.62,
				r * 0.9,
			);
			left = Math.min(left, chain[i].x - r);
			right = Math.max(right, chain[i].x + r);
			low = Math.min(low, chain[i].y - r);
			high = Math.max(high, chain[i].y + r);
		}
		const blur = 0.75 * widest + 0.02 * radius_mm;
		shadowMaterial.uniforms.blur.value = blur;
		shadow.matrix.makeTranslation((left + right) / 2, (low + high) / 2, -f.distance);
		shadow.matrix.multiply(step1.makeScale(right - left + 2 * blur, high - low + 2 * blur, 1));
		shadow.matrixWorldNeedsUpdate = true;
	};

	const gl = renderer.getContext() as WebGL2RenderingContext;
	const software = isSoftware(gl);

	return {
		draw(pictures, step, pixelRatio) {
			const box = canvas.getBoundingClientRect();
			const width = Math.max(1, Math.round(box.width * pixelRatio * step.scale));
			const height = Math.max(1, Math.round(box.height * pixelRatio * step.scale));
			if (canvas.width !== width || canvas.height !== height) renderer.setSize(width, height, false);
			renderer.info.reset();
			renderer.setRenderTarget(null);
			renderer.setScissorTest(false);
			renderer.clear();
			renderer.setScissorTest(true);
			const full = step.shading === 'full';
			const placed = pictures.flatMap((picture) => {
				const rect = viewRect(picture.box, box, width, height);
				return rect ? [{ picture, rect }] : [];
			});
			const room = full
				? targetOf(
						Math.max(1, ...placed.map(({ rect }) => rect.width)),
						Math.max(1, ...placed.map(({ rect }) => rect.height)),
					)
				: null;
			for (const { picture, rect } of placed) {
				arrange(picture, rect.lens, full);
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
		pixels(pixelRatio) {
			const box = canvas.getBoundingClientRect();
			return box.width * box.height * pixelRatio * pixelRatio;
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
