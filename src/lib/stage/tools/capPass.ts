/** Draws the faces of a cut over what is left of the tooth: nothing of it can lie before them. */
import { BufferGeometry, FrontSide, Matrix4, Mesh, NoBlending, Scene, ShaderMaterial, Vector3 } from 'three';
import type { Lamp } from '../api';
import { lampFrame, lampGain } from '../lamp';
import type { ViewCut, Level } from './viewCut';

const CAP_VERTEX = /* glsl */ `
void main() {
	gl_Position = projectionMatrix * (modelViewMatrix * vec4(position, 1.0));
}
`;

// a sawn face is dull: lamplight and a little of the room, no gloss
const CAP_FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform vec3 faceNormal;
uniform vec3 lampDir;
uniform float lampGain;
void main() {
	float lit = max(0.0, dot(faceNormal, lampDir) * 0.85 + 0.15);
	vec3 light = vec3(1.00, 0.90, 0.76) * lampGain * 1.05 * lit + vec3(0.34, 0.32, 0.30);
	vec3 c = clamp(colour * light, 0.0, 1.0);
	c = mix(c * 12.92, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
	gl_FragColor = vec4(c, 1.0);
}
`;

export interface CapPass {
	scene: Scene;
	/** `stand` brings the tooth frame to the eye's. */
	set(cut: ViewCut, level: Level, stand: Matrix4, lamp: Lamp): void;
	/** Lets go of what was drawn. */
	clear(): void;
	dispose(): void;
}

export const createCapPass = (): CapPass => {
	const material = new ShaderMaterial({
		name: 'cut face',
		vertexShader: CAP_VERTEX,
		fragmentShader: CAP_FRAGMENT,
		uniforms: {
			colour: { value: new Vector3() },
			faceNormal: { value: new Vector3() },
			lampDir: { value: new Vector3() },
			lampGain: { value: 1 },
		},
		side: FrontSide,
		blending: NoBlending,
		depthTest: false,
		depthWrite: false,
		toneMapped: false,
	});
	const empty = new BufferGeometry();
	const face = new Mesh(empty, material);
	face.frustumCulled = false;
	face.matrixAutoUpdate = false;
	const scene = new Scene();
	scene.add(face);
	return {
		scene,
		set(cut, level, stand, lamp) {
			const { uniforms } = material;
			face.geometry = cut.cap(level);
			face.matrix.copy(stand);
			face.matrixWorldNeedsUpdate = true;
			const e = stand.elements;
			uniforms.colour.value.copy(cut.colour);
			uniforms.faceNormal.value.set(e[4], e[5], e[6]);
			uniforms.lampDir.value.set(...lampFrame(lamp).dir);
			uniforms.lampGain.value = lampGain(lamp);
		},
		clear() {
			face.geometry = empty;
		},
		dispose() {
			material.dispose();
		},
	};
};
