/** Questions to a tooth's surface, answered from every triangle of its full level. Tooth frame, mm. */
import { DoubleSide, Ray as ThreeRay, Vector3, type BufferGeometry } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { section } from '../domain/mesh/section';
import { sectionMeasure } from '../domain/mesh/sectionMeasure';
import type { PlaneFrame } from '../domain/mesh/section';
import type { TriMesh } from '../domain/mesh/triMesh';
import { weld } from '../domain/mesh/weld';
import { vec3, type Vec3 } from '../domain/vec3';
import type { SurfaceHit } from './api';
import type { Ray } from './pins';

export interface Picker {
	/** Where a line of sight first meets the surface; its normal looks towards where the line comes from. */
	pick(ray: Ray): SurfaceHit | null;
	/** The point of the surface nearest to any point, with the outward normal. */
	nearest(point: Vec3): SurfaceHit;
	/** Whether nothing lies between a point of the surface and the eye; `slack_mm` forgives the surface at the point itself. */
	open(point: Vec3, eye: Vec3, slack_mm: number): boolean;
	/** Middle (centroid) of the section at a height along the frame's normal; null where the plane misses the tooth. */
	middleAt(frame: PlaneFrame, height_mm: number): Vec3 | null;
	/** Where the surface lies outermost in a direction seen from a point within; null when it lies nowhere there. */
	outermost(from: Vec3, direction: Vec3): SurfaceHit | null;
}

const made = new WeakMap<BufferGeometry, Picker>();

/** The picker of a geometry, built at the first question and let go together with the geometry. */
export const pickerOf = (geometry: BufferGeometry): Picker => {
	let picker = made.get(geometry);
	if (!picker) {
		picker = createPicker(geometry);
		made.set(geometry, picker);
	}
	return picker;
};

/** A geometry has been bent: its picker no longer holds. */
export const forgetPicker = (geometry: BufferGeometry): void => void made.delete(geometry);

const tuple = ({ x, y, z }: Vector3): Vec3 => [x, y, z];

/** Builds the tree over a geometry's triangles, which stay as they are. */
export const createPicker = (geometry: BufferGeometry): Picker => {
	const bvh = new MeshBVH(geometry, { indirect: true });
	const positions = geometry.getAttribute('position').array as Float32Array;
	const index = geometry.index;
	const corner = (face: number, k: number): Vec3 => {
		const v = index ? index.getX(face * 3 + k) : face * 3 + k;
		return [positions[v * 3], positions[v * 3 + 1], positions[v * 3 + 2]];
	};
	const normalOf = (face: number): Vec3 => {
		const [a, b, c] = [corner(face, 0), corner(face, 1), corner(face, 2)];
		const n = vec3.cross(vec3.subtract(b, a), vec3.subtract(c, a));
		return vec3.norm(n) > 0 ? vec3.normalise(n) : [0, 1, 0];
	};
	const threeRay = ({ origin, direction }: Ray) =>
		new ThreeRay(new Vector3(...origin), new Vector3(...direction));
	let welded: TriMesh | null = null;

	return {
		pick(ray) {
			const hit = bvh.raycastFirst(threeRay(ray), DoubleSide);
			if (!hit) return null;
			const n = normalOf(hit.faceIndex!);
			return { point: tuple(hit.point), normal: vec3.dot(n, ray.direction) > 0 ? vec3.scale(n, -1) : n };
		},
		nearest(point) {
			const hit = bvh.closestPointToPoint(new Vector3(...point))!;
			return { point: tuple(hit.point), normal: normalOf(hit.faceIndex) };
		},
		open(point, eye, slack_mm) {
			const way = vec3.subtract(point, eye);
			const length = vec3.norm(way);
			if (!(length > 0)) return true;
			const ray = { origin: eye, direction: vec3.scale(way, 1 / length) };
			const hit = bvh.raycastFirst(threeRay(ray), DoubleSide);
			return !hit || hit.distance >= length - slack_mm;
		},
		middleAt(frame, height_mm) {
			welded ??= weld({
				positions,
				indices: index
					? Uint32Array.from(index.array)
					: Uint32Array.from({ length: positions.length / 3 }, (_, i) => i),
			});
			const values = sectionMeasure(section(welded, frame, height_mm));
			if (!values) return null;
			const [x, y] = values.centroid;
			const flat = vec3.add(vec3.scale(frame.u, x), vec3.scale(frame.v, y));
			return vec3.add(vec3.add(frame.origin, flat), vec3.scale(frame.normal, height_mm));
		},
		outermost(from, direction) {
			const hits = bvh.raycast(threeRay({ origin: from, direction }), DoubleSide);
			let far = hits[0];
			for (const hit of hits) if (hit.distance > far.distance) far = hit;
			if (!far) return null;
			const n = normalOf(far.faceIndex!);
			return { point: tuple(far.point), normal: vec3.dot(n, direction) < 0 ? vec3.scale(n, -1) : n };
		},
	};
};
