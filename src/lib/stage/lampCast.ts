/** The depth map that a tooth throws shadows on itself with. */
import {
	BackSide,
	BufferGeometry,
	Camera,
	DepthTexture,
	DoubleSide,
	LessEqualCompare,
	LinearFilter,
	Matrix4,
	Mesh,
	RedFormat,
	Scene,
	ShaderMaterial,
	UnsignedByteType,
	UnsignedIntType,
	Vector2,
	WebGLRenderTarget,
	type WebGLRenderer,
} from 'three';
import type { Lamp, ShapeRef } from './api';
import { lampFrame } from './lamp';
import { CAST_FRAGMENT, CAST_VERTEX } from './shading.glsl';

/** Side of the depth map, px: on a tooth that fills the screen's height one px of it is about one of the screen's. */
export const MAP_px = 1024;
/** Half-width of a shadow's soft edge, share of the tooth's bounding radius. */
const SOFT = 0.007;

/** No tooth reaches so high. */
const NO_CUT_mm = 1e6;

/** What a tooth's own shader needs of the map. */
export interface LampCast {
	/** tooth frame to the lamp's clip space */
	toLamp: Matrix4;
	map: DepthTexture;
	/** half-width of the soft edge in the map, 0 .. 1 */
	spread: Vector2;
	/** how far along its normal a point is lifted before it is looked up, mm: no acne on coarse triangles */
	lift_mm: number;
}

/**
 * Clip space of a lamp without perspective that just holds the turned bounds. `turn` brings the tooth frame to a
 * frame at the middle of the bounds, x right, y up, z to the viewer, mm. Also how large a mm is in the map, 0 .. 1.
 */
export const lampView = (
	bounds: ShapeRef['bounds'],
	turn: Matrix4,
	lamp: Lamp,
): { toLamp: Matrix4; perMm: Vector2 } => {
	const { side, over, dir } = lampFrame(lamp);
	const axes = new Matrix4().set(
		...([...side, 0, ...over, 0, ...dir, 0, 0, 0, 0, 1] as Parameters<Matrix4['set']>),
	);
	const seen = axes.multiply(turn);
	const e = seen.elements;
	const half = [0, 1, 2].map((i) => (bounds.max[i] - bounds.min[i]) / 2);
	const reach = (row: number) =>
		1.02 * (Math.abs(e[row]) * half[0] + Math.abs(e[4 + row]) * half[1] + Math.abs(e[8 + row]) * half[2]) +
		1e-6;
	const [x, y, z] = [reach(0), reach(1), reach(2)];
	const toLamp = new Matrix4().makeScale(1 / x, 1 / y, -1 / z).multiply(seen);
	return { toLamp, perMm: new Vector2(0.5 / x, 0.5 / y) };
};

export interface Caster {
	/** Draws the map of one view's parts; it holds until the next call. Leaves the renderer's target changed. */
	cast(
		parts: readonly { geometry: BufferGeometry; closed: boolean; place: Matrix4 | null }[],
		bounds: ShapeRef['bounds'],
		turn: Matrix4,
		lamp: Lamp,
		/** what lies above casts nothing; mm along the parts' own y, null = all of it casts */
		cut_mm?: number | null,
	): LampCast;
	/** Makes the shader now. */
	warm(): void;
	/** Frees the map; the next call makes it anew. */
	drop(): void;
	dispose(): void;
}

/** One map for all views, drawn again for each. */
export const createCaster = (renderer: WebGLRenderer): Caster => {
	const make = (closed: boolean) =>
		new ShaderMaterial({
			name: 'lamp depth',
			vertexShader: CAST_VERTEX,
			fragmentShader: CAST_FRAGMENT,
			uniforms: { toLamp: { value: new Matrix4() }, cutHeight: { value: NO_CUT_mm } },
			// the far side of a closed tooth is in the dark anyway: shadows cast by it cannot spoil the lit side
			side: closed ? BackSide : DoubleSide,
			colorWrite: false,
			toneMapped: false,
		});
	const [closedMaterial, openMaterial] = [make(true), make(false)];
	const mesh = new Mesh(new BufferGeometry(), closedMaterial);
	mesh.frustumCulled = false;
	mesh.matrixAutoUpdate = false;
	const scene = new Scene();
	scene.add(mesh);
	const camera = new Camera();
	let target: WebGLRenderTarget | null = null;
	const drop = () => {
		target?.depthTexture?.dispose();
		target?.dispose();
		target = null;
	};
	const made = (): WebGLRenderTarget => {
		const depthTexture = new DepthTexture(MAP_px, MAP_px, UnsignedIntType);
		depthTexture.compareFunction = LessEqualCompare;
		depthTexture.minFilter = LinearFilter;
		depthTexture.magFilter = LinearFilter;
		return new WebGLRenderTarget(MAP_px, MAP_px, {
			format: RedFormat,
			type: UnsignedByteType,
			depthTexture,
			depthBuffer: true,
			stencilBuffer: false,
			generateMipmaps: false,
		});
	};
	return {
		cast(parts, bounds, turn, lamp, cut_mm = null) {
			target ??= made();
			const { toLamp, perMm } = lampView(bounds, turn, lamp);
			const closed = parts.every((part) => part.closed);
			target.viewport.set(0, 0, MAP_px, MAP_px);
			target.scissorTest = false;
			renderer.setRenderTarget(target);
			renderer.clear(false, true, false);
			for (const part of parts) {
				const material = part.closed ? closedMaterial : openMaterial;
				const matrix: Matrix4 = material.uniforms.toLamp.value;
				matrix.copy(toLamp);
				if (part.place) matrix.multiply(part.place);
				material.uniforms.cutHeight.value = cut_mm ?? NO_CUT_mm;
				material.uniformsNeedUpdate = true;
				mesh.geometry = part.geometry;
				mesh.material = material;
				renderer.render(scene, camera);
			}
			const radius_mm = Math.hypot(...[0, 1, 2].map((i) => bounds.max[i] - bounds.min[i])) / 2;
			const texel_mm = 1 / (MAP_px * Math.min(perMm.x, perMm.y));
			const soft_mm = Math.max(SOFT * radius_mm, 1.2 * texel_mm);
			return {
				toLamp,
				map: target.depthTexture!,
				spread: perMm.multiplyScalar(soft_mm),
				lift_mm: closed ? 0.6 * texel_mm : soft_mm + texel_mm,
			};
		},
		warm() {
			renderer.compile(scene, camera);
		},
		drop,
		dispose() {
			drop();
			closedMaterial.dispose();
			openMaterial.dispose();
		},
	};
};
