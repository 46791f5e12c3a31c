/** The two materials of a view's tooth and their shared uniforms. */
import {
	Color,
	CustomBlending,
	DoubleSide,
	FrontSide,
	Matrix3,
	Matrix4,
	NoBlending,
	OneFactor,
	OneMinusSrcAlphaFactor,
	ShaderMaterial,
	Vector2,
	Vector3,
	Vector4,
} from 'three';
import { PALETTES } from '../content/palettes';
import type { Preservation } from '../content/exhibit';
import { REGIONS, type Region } from '../domain/mesh/triMesh';
import type { LampCast } from './lampCast';
import { lampFrame, lampGain } from './lamp';
import type { Lamp, MeshPart } from './api';
import { TOOTH_FRAGMENT, TOOTH_VERTEX } from './shading.glsl';

/** roughness 0 .. 1, strength of the glossy coat, of fibres, of enamel's own marks (banding, translucency) */
const FINISH: Readonly<Record<Region, readonly [number, number, number, number]>> = {
	enamel: [0.34, 1, 0, 1],
	carina: [0.34, 1, 0, 1],
	ridge: [0.34, 1, 0, 1],
	facet: [0.68, 0.16, 0.16, 0],
	dentine: [0.78, 0.06, 0.4, 0],
	root: [0.82, 0.05, 1, 0],
	pit: [0.92, 0, 0.6, 0],
	pulp: [0.92, 0, 0.3, 0],
};

export interface ToothMaterials {
	full: ShaderMaterial;
	light: ShaderMaterial;
	/** `closed`: the inner side need not be drawn. */
	dress(preservation: Preservation, crownHeight_mm: number, closed: boolean): void;
	/** Mixes a colour into the palette and lets what lies behind shine through; call it after `dress`. */
	colour(tint: MeshPart['tint'] | null, opacity: number): void;
	/** Puts the lamp there; `cast`: what the tooth throws its own shadow with, needed at full quality. */
	illuminate(lamp: Lamp, cast: LampCast | null, place?: Matrix4 | null): void;
	dispose(): void;
}

/** Colour in linear light of each region, in REGIONS' order. */
export const linearPalette = (preservation: Preservation): Vector3[] =>
	REGIONS.map((region) => {
		const [r, g, b] = PALETTES[preservation][region];
		const colour = new Color().setRGB(r / 255, g / 255, b / 255, 'srgb');
		return new Vector3(colour.r, colour.g, colour.b);
	});

export const createToothMaterials = (): ToothMaterials => {
	const uniforms = {
		palette: { value: linearPalette('living') },
		finish: { value: REGIONS.map((region) => new Vector4(...FINISH[region])) },
		crownHeight: { value: 1 },
		lamp: { value: new Matrix3() },
		lampGain: { value: 1 },
		opacity: { value: 1 },
	};
	const casting = {
		toLamp: { value: new Matrix4() },
		lampLift: { value: 0 },
		shadowMap: { value: null as LampCast['map'] | null },
		shadowSpread: { value: new Vector2() },
	};
	const make = (full: boolean) => {
		const material = new ShaderMaterial({
			name: full ? 'tooth at rest' : 'tooth in motion',
			vertexShader: TOOTH_VERTEX,
			fragmentShader: TOOTH_FRAGMENT,
			uniforms: full ? { ...uniforms, ...casting } : uniforms,
			defines: full ? { FULL: '' } : {},
			side: FrontSide,
			blending: NoBlending,
			toneMapped: false,
		});
		// what a geometry without colours of its own has there
		Object.assign(material.defaultAttributeValues, { colour: [0, 0, 0, 0] });
		return material;
	};
	const [full, light] = [make(true), make(false)];
	return {
		full,
		light,
		dress(preservation, crownHeight_mm, closed) {
			for (const material of [full, light]) {
				const side = closed ? FrontSide : DoubleSide;
				if (material.side !== side) material.needsUpdate = true;
				material.side = side;
			}
			uniforms.palette.value = linearPalette(preservation);
			uniforms.crownHeight.value = Math.max(1e-6, crownHeight_mm);
		},
		colour(tint, opacity) {
			if (tint) {
				const [r, g, b] = tint.rgb;
				const colour = new Color().setRGB(r / 255, g / 255, b / 255, 'srgb');
				for (const own of uniforms.palette.value)
					own.lerp(new Vector3(colour.r, colour.g, colour.b), tint.share);
			}
			uniforms.opacity.value = opacity;
			for (const material of [full, light]) {
				material.transparent = opacity < 1;
				material.blending = opacity < 1 ? CustomBlending : NoBlending;
				material.blendSrc = OneFactor;
				material.blendDst = OneMinusSrcAlphaFactor;
			}
		},
		illuminate(lamp, cast, place) {
			const { side, over, dir } = lampFrame(lamp);
			uniforms.lamp.value.fromArray([...side, ...over, ...dir]);
			uniforms.lampGain.value = lampGain(lamp);
			if (!cast) return;
			casting.toLamp.value.copy(cast.toLamp);
			if (place) casting.toLamp.value.multiply(place);
			casting.lampLift.value = cast.lift_mm;
			casting.shadowMap.value = cast.map;
			casting.shadowSpread.value.copy(cast.spread);
		},
		dispose() {
			full.dispose();
			light.dispose();
		},
	};
};
