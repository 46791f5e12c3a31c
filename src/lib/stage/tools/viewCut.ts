/** A cut through a view's tooth: where it is, and the faces that fill it. */
import { BufferAttribute, BufferGeometry, type Vector3 } from 'three';
import { capSection } from '../../domain/mesh/capSection';
import type { LoadedShape } from '../loadShape';
import type { ToothMaterials } from '../materials';
import { regionIndex } from '../../domain/mesh/triMesh';
import { cutterOf } from './cutter';

export type Level = 'full' | 'light';

/** Height of the cut, mm above the base; its faces are made when they are first drawn. */
export class ViewCut {
	readonly height_mm: number;
	/** of the faces, linear light */
	readonly colour: Vector3;
	#loaded: LoadedShape;
	#caps = new Map<BufferGeometry, BufferGeometry>();

	constructor(loaded: LoadedShape, height_mm: number, materials: ToothMaterials) {
		this.#loaded = loaded;
		this.height_mm = height_mm;
		this.colour = materials.light.uniforms.palette.value[regionIndex('dentine')] as Vector3;
	}

	/** Whether the plane meets the tooth: beyond it nothing is cut. */
	get meets(): boolean {
		return cutterOf(this.#loaded.light)(this.height_mm) !== null;
	}

	/** The faces of one level, tooth frame, mm. */
	cap(level: Level): BufferGeometry {
		const source = this.#loaded[level];
		let cap = this.#caps.get(source);
		if (!cap) {
			cap = capGeometry(source, this.height_mm);
			this.#caps.set(source, cap);
		}
		return cap;
	}

	dispose(): void {
		for (const cap of this.#caps.values()) cap.dispose();
		this.#caps.clear();
	}
}

const capGeometry = (source: BufferGeometry, height_mm: number): BufferGeometry => {
	const { points, indices } = capSection(cutterOf(source)(height_mm)?.loops ?? []);
	const positions = new Float32Array((points.length / 2) * 3);
	for (let i = 0; i < points.length / 2; i++) {
		// the plane's v looks away from +z
		positions.set([points[i * 2], height_mm, -points[i * 2 + 1]], i * 3);
	}
	const geometry = new BufferGeometry();
	geometry.setAttribute('position', new BufferAttribute(positions, 3));
	geometry.setIndex(new BufferAttribute(indices, 1));
	return geometry;
};
