/** The two flat drawings beside the tooth: its shadow on the felt, and the copy out of the antialiased buffer. */
import {
	BufferAttribute,
	BufferGeometry,
	CustomBlending,
	Mesh,
	NearestFilter,
	OneFactor,
	OneMinusSrcAlphaFactor,
	PlaneGeometry,
	Scene,
	ShaderMaterial,
	Vector2,
	Vector3,
	WebGLRenderTarget,
	type Texture,
} from 'three';
import { CENTRE_POINTS } from './centreLine';
import type { Placement } from './placement';
import {
	CAST_FRAGMENT,
	COPY_FRAGMENT,
	COPY_VERTEX,
	SHADOW_FRAGMENT,
	SHADOW_VERTEX,
	VEIL_VERTEX,
} from './shading.glsl';

/** Both write premultiplied colour over what is there. */
const OVER = {
	blending: CustomBlending,
	blendSrc: OneFactor,
	blendDst: OneMinusSrcAlphaFactor,
	depthTest: false,
	depthWrite: false,
	toneMapped: false,
} as const;

/** The shadow fades over this share of the view's shorter side. */
const FADE = 0.24;

export interface ShadowPass {
	scene: Scene;
	/** `width_mm`, `height_mm`: of the view at the tooth's distance; the shadow fades before its edge */
	set(placement: Placement, distance_mm: number, width_mm: number, height_mm: number): void;
	dispose(): void;
}

export const createShadowPass = (): ShadowPass => {
	const material = new ShaderMaterial({
		name: 'contact shadow',
		vertexShader: SHADOW_VERTEX,
		fragmentShader: SHADOW_FRAGMENT,
		uniforms: {
			chain: { value: Array.from({ length: CENTRE_POINTS }, () => new Vector3()) },
			blur: { value: 1 },
			strength: { value: 0.66 },
			felt: { value: new Vector3() },
		},
		...OVER,
	});
	const quad = new Mesh(new PlaneGeometry(1, 1), material);
	quad.frustumCulled = false;
	const scene = new Scene();
	scene.add(quad);
	return {
		scene,
		set({ chain, blur_mm, shadow: { left, right, top, bottom } }, distance_mm, width_mm, height_mm) {
			const fade_mm = FADE * Math.min(width_mm, height_mm);
			(material.uniforms.felt.value as Vector3).set(width_mm / 2, height_mm / 2, fade_mm);
			material.uniforms.chain.value = chain;
			material.uniforms.blur.value = blur_mm;
			quad.position.set((left + right) / 2, (top + bottom) / 2, -distance_mm);
			quad.scale.set(right - left, top - bottom, 1);
		},
		dispose() {
			quad.geometry.dispose();
			material.dispose();
		},
	};
};

export interface CopyPass {
	scene: Scene;
	/** `x`, `y`: where on the canvas the texture's lower left corner belongs, px */
	set(texture: Texture, x: number, y: number): void;
	dispose(): void;
}

export const createCopyPass = (): CopyPass => {
	const material = new ShaderMaterial({
		name: 'copy',
		vertexShader: COPY_VERTEX,
		fragmentShader: COPY_FRAGMENT,
		uniforms: { map: { value: null }, corner: { value: new Vector2() } },
		...OVER,
	});
	const cover = new BufferGeometry();
	cover.setAttribute('position', new BufferAttribute(new Float32Array([-1, -1, 0, 3, -1, 0, -1, 3, 0]), 3));
	const triangle = new Mesh(cover, material);
	triangle.frustumCulled = false;
	const scene = new Scene();
	scene.add(triangle);
	return {
		scene,
		set(texture, x, y) {
			material.uniforms.map.value = texture;
			(material.uniforms.corner.value as Vector2).set(x, y);
		},
		dispose() {
			cover.dispose();
			material.dispose();
		},
	};
};

/** Draws only depth, after everything solid: see the painter. */
export const createVeil = (): ShaderMaterial =>
	new ShaderMaterial({
		name: 'veil',
		vertexShader: VEIL_VERTEX,
		fragmentShader: CAST_FRAGMENT,
		colorWrite: false,
		transparent: true,
		toneMapped: false,
	});

/** Its sides are multiples of this, px, so that it is seldom made anew. */
const BUFFER_GRID = 64;
const SAMPLES = 4;

export interface SampledBuffer {
	/** At least this large; kept while it is not much too large. */
	atLeast(width: number, height: number): WebGLRenderTarget;
	/** Frees it; the next call makes it anew. */
	drop(): void;
}

/** One antialiased buffer for all views. */
export const createSampledBuffer = (maxSamples: number): SampledBuffer => {
	let target: WebGLRenderTarget | null = null;
	const upTo = (size: number) => Math.ceil(size / BUFFER_GRID) * BUFFER_GRID;
	const drop = () => {
		target?.dispose();
		target = null;
	};
	return {
		atLeast(width, height) {
			const small = target && (target.width < width || target.height < height);
			const large = target && target.width * target.height > 2 * upTo(width) * upTo(height);
			if (small || large) drop();
			target ??= new WebGLRenderTarget(upTo(width), upTo(height), {
				samples: Math.min(SAMPLES, maxSamples),
				minFilter: NearestFilter,
				magFilter: NearestFilter,
				generateMipmaps: false,
				stencilBuffer: false,
				resolveDepthBuffer: false,
			});
			return target;
		},
		drop,
	};
};
