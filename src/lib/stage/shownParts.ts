/** The pieces that a view draws: one for a prepared shape, any number for a shape made in the browser. */
import { Matrix4 } from 'three';
import type { MeshPart, MeshShape, ShapeRef } from './api';
import { CENTRE_POINTS, type CentreLine } from './centreLine';
import type { LoadedShape } from './loadShape';
import { createToothMaterials, type ToothMaterials } from './materials';
import { bendGeometry, meshGeometry, sameTopology, type MeshGeometry } from './meshGeometry';
import { forgetPicker } from './pick';

export interface PaintedPart {
	loaded: LoadedShape;
	materials: ToothMaterials;
	/** from the part's frame to the view's; null = the same */
	place: Matrix4 | null;
	/** below 1 = see-through */
	opacity: number;
}

interface ShownPart extends PaintedPart {
	id: string;
	loaded: MeshGeometry;
	hidden: boolean;
	occlusion: ArrayLike<number> | undefined;
	/** how its materials are dressed now */
	dressed: string;
}

/** What `showMesh` has put into a view. */
export class ShownParts {
	#parts = new Map<string, ShownPart>();
	/** what the contact shadow is made of; null for none */
	centreLine: CentreLine | null = null;

	constructor(shape: MeshShape) {
		this.update(shape);
	}

	/** The parts that are seen, in the shape's order. */
	get painted(): (PaintedPart & { id: string })[] {
		return [...this.#parts.values()].filter((part) => !part.hidden && part.opacity > 0);
	}

	/** Brings the parts up to date: makes new ones, bends those of the same topology, lets go of those left out. */
	update(shape: MeshShape): void {
		const old = this.#parts;
		this.#parts = new Map();
		for (const wanted of shape.parts) {
			this.#parts.set(wanted.id, this.#bring(wanted, old.get(wanted.id), shape));
			old.delete(wanted.id);
		}
		for (const part of old.values()) dispose(part);
		this.centreLine = shape.noShadow ? null : mainLine(this.painted, shape.bounds);
	}

	#bring(wanted: MeshPart, part: ShownPart | undefined, shape: MeshShape): ShownPart {
		let loaded = part?.loaded;
		if (part && loaded && sameTopology(loaded.mesh, wanted.mesh)) {
			if (loaded.mesh !== wanted.mesh || part.occlusion !== wanted.occlusion) {
				bendGeometry(loaded, wanted.mesh, wanted.occlusion);
				forgetPicker(loaded.full);
			}
		} else {
			loaded?.full.dispose();
			loaded = meshGeometry(wanted.mesh, wanted.occlusion);
		}
		const materials = part?.materials ?? createToothMaterials();
		const opacity = Math.min(1, Math.max(0, wanted.opacity ?? 1));
		const preservation = wanted.preservation ?? shape.preservation;
		const height_mm = wanted.crownHeight_mm ?? shape.crownHeight_mm;
		const dressed = JSON.stringify([preservation, height_mm, loaded.closed, wanted.tint ?? null, opacity]);
		if (dressed !== part?.dressed) {
			materials.dress(preservation, height_mm, loaded.closed);
			materials.colour(wanted.tint ?? null, opacity);
		}
		return {
			id: wanted.id,
			loaded,
			materials,
			place: wanted.place ? new Matrix4().fromArray(wanted.place) : null,
			opacity,
			hidden: wanted.hidden ?? false,
			occlusion: wanted.occlusion,
			dressed,
		};
	}

	/** Gives everything back. */
	dispose(): void {
		for (const part of this.#parts.values()) dispose(part);
		this.#parts.clear();
	}
}

const dispose = ({ loaded, materials }: ShownPart): void => {
	loaded.full.dispose();
	materials.dispose();
};

/** The line of the tallest part, where it is placed, or of all parts side by side where they make a row. */
const mainLine = (parts: readonly PaintedPart[], bounds: ShapeRef['bounds']): CentreLine | null => {
	const points = new Float32Array(CENTRE_POINTS * 4);
	const lines = parts
		.filter(({ opacity }) => opacity > 0.5)
		.map(({ loaded, place }) => {
			const line = loaded.centreLine.points.slice();
			const size = place ? place.getMaxScaleOnAxis() : 1;
			for (let i = 0; i < CENTRE_POINTS; i++) {
				const at = line.subarray(i * 4, i * 4 + 4);
				if (place) at.set(moved(place, at[0], at[1], at[2]));
				at[3] *= size;
			}
			return line;
		});
	if (lines.length === 0) return null;
	const wide = bounds.max[0] - bounds.min[0] > 1.5 * (bounds.max[1] - bounds.min[1]);
	if (lines.length < CENTRE_POINTS || !wide) {
		const height = (line: Float32Array) => Math.abs(line[(CENTRE_POINTS - 1) * 4 + 1] - line[1]);
		return { points: lines.reduce((a, b) => (height(b) > height(a) ? b : a)) };
	}
	lines.sort((a, b) => a[0] - b[0]);
	for (let i = 0; i < CENTRE_POINTS; i++) {
		const line = lines[Math.round((i * (lines.length - 1)) / (CENTRE_POINTS - 1))];
		points.set(line.subarray(8, 12), i * 4);
	}
	return { points };
};

const moved = (place: Matrix4, x: number, y: number, z: number): [number, number, number] => {
	const e = place.elements;
	return [
		e[0] * x + e[4] * y + e[8] * z + e[12],
		e[1] * x + e[5] * y + e[9] * z + e[13],
		e[2] * x + e[6] * y + e[10] * z + e[14],
	];
};
