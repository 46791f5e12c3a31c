/** What a view draws and what can be touched in it, whether its shape was loaded or made in the browser. */
import { Matrix4, Vector3 } from 'three';
import { vec3, type Vec3 } from '../domain/vec3';
import type { SurfaceHit } from './api';
import type { CentreLine } from './centreLine';
import type { HandledView } from './handledView';
import { pickerOf, type Picker } from './pick';
import type { Ray } from './pins';
import type { PaintedPart } from './shownParts';

type Shown = Pick<HandledView, 'loan' | 'parts' | 'materials'>;

/** The pieces to draw, and what the shadow on the felt is made of. */
export const paintedOf = ({
	loan,
	parts,
	materials,
}: Shown): { parts: PaintedPart[]; centreLine: CentreLine | null } => {
	if (parts) return { parts: parts.painted, centreLine: parts.centreLine };
	if (!loan) return { parts: [], centreLine: null };
	const { resource } = loan;
	return {
		parts: [{ loaded: resource, materials, place: null, opacity: 1 }],
		centreLine: resource.centreLine,
	};
};

/** The surface that questions are put to: of several parts the first that stands where it was made. */
export const surfaceOf = (view: Shown): Picker | null => {
	const part = paintedOf(view).parts.find(({ place }) => place === null);
	return part ? pickerOf(part.loaded.full) : null;
};

const tuple = ({ x, y, z }: Vector3): Vec3 => [x, y, z];

/** Where a line of sight first meets a solid part; see-through parts let it pass unless nothing else is met. */
export const pickPart = (view: Shown, ray: Ray): SurfaceHit | null => {
	if (!view.parts) return surfaceOf(view)?.pick(ray) ?? null;
	let best: { hit: SurfaceHit; distance: number; solid: boolean } | null = null;
	for (const { id, loaded, place, opacity } of view.parts.painted) {
		const into = place && new Matrix4().copy(place).invert();
		const local: Ray = into
			? {
					origin: tuple(new Vector3(...ray.origin).applyMatrix4(into)),
					direction: tuple(new Vector3(...ray.direction).transformDirection(into)),
				}
			: ray;
		const found = pickerOf(loaded.full).pick(local);
		if (!found) continue;
		const point = place ? tuple(new Vector3(...found.point).applyMatrix4(place)) : found.point;
		const normal = place ? tuple(new Vector3(...found.normal).transformDirection(place)) : found.normal;
		const distance = vec3.norm(vec3.subtract(point, ray.origin));
		const solid = opacity === 1;
		const nearer = !best || (solid !== best.solid ? solid : distance < best.distance);
		if (nearer) best = { hit: { point, normal, part: id }, distance, solid };
	}
	return best?.hit ?? null;
};
