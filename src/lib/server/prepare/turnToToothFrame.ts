import type { FileFrame } from '../../content/fileFrame';
import type { CrownMarks, CrownMeasures } from '../../domain/measure/crownMeasures';
import { markedFrame } from '../../domain/measure/markedFrame';
import { orient, type Rows } from '../../domain/mesh/orient';
import type { TriMesh } from '../../domain/mesh/triMesh';
import { vec3, type Vec3 } from '../../domain/vec3';

export interface TurnedTooth {
	mesh: TriMesh;
	measures: CrownMeasures;
	/** where the mesh's own frame lies in the tooth frame */
	frame: FileFrame;
	/** which way the labial side looks; only where it is marked */
	labial?: '+z' | '-z';
}

/**
 * Turns a measured scan into the tooth frame of mesh/triMesh.ts: origin midway between the base points, +x
 * towards distal, +y square to the base towards the tip. A scan is never mirrored, so +z is labial or
 * lingual as the tooth's side of the jaw has it. Places and directions in the measures are turned too.
 * `marks` are those that it was measured by, if any.
 */
export function turnToToothFrame(mesh: TriMesh, measures: CrownMeasures, marks?: CrownMarks): TurnedTooth {
	const { apex, baseMesial, baseDistal } = measures;
	const origin = vec3.lerp(baseMesial, baseDistal, 0.5);
	const x = vec3.normalise(vec3.subtract(baseDistal, baseMesial));
	const marked = marks ? markedFrame(marks) : null;
	const y = marked
		? marked.frame.normal
		: baseNormal(mesh, x, origin, vec3.subtract(apex, origin), measures.axialHeight_mm);
	const z = vec3.cross(x, y);
	const rows: Rows = [x, y, z];
	const direction = (d: Vec3): Vec3 => [vec3.dot(d, x), vec3.dot(d, y), vec3.dot(d, z)];
	const place = (p: Vec3): Vec3 => direction(vec3.subtract(p, origin));
	const offset = vec3.scale(direction(origin), -1);
	return {
		mesh: orient(mesh, rows, offset),
		measures: {
			...measures,
			apex: place(apex),
			baseMesial: place(baseMesial),
			baseDistal: place(baseDistal),
			facets: measures.facets.map((facet) => ({ ...facet, normal: direction(facet.normal) })),
		},
		frame: { rows: [x, y, z], offset },
		...(marked && marks?.labial ? { labial: marked.labial } : {}),
	};
}

/**
 * Normal of the base plane from what the measures say of it: it is square to the line of the base
 * points, and the apex stands `height` above it. Two planes fit; the right one leaves the tooth above itself.
 */
function baseNormal(mesh: TriMesh, along: Vec3, origin: Vec3, toApex: Vec3, height: number): Vec3 {
	const rise = vec3.subtract(toApex, vec3.scale(along, vec3.dot(toApex, along)));
	const up = vec3.normalise(rise);
	const across = vec3.cross(along, up);
	const cos = Math.min(1, height / vec3.norm(rise));
	const sin = Math.sqrt(1 - cos * cos);
	const [a, b] = [1, -1].map((sign) => vec3.add(vec3.scale(up, cos), vec3.scale(across, sign * sin)));
	return lowest(mesh, origin, a) >= lowest(mesh, origin, b) ? a : b;
}

function lowest({ positions: p }: TriMesh, origin: Vec3, normal: Vec3): number {
	let least = Infinity;
	for (let i = 0; i < p.length; i += 3) {
		const h =
			(p[i] - origin[0]) * normal[0] +
			(p[i + 1] - origin[1]) * normal[1] +
			(p[i + 2] - origin[2]) * normal[2];
		if (h < least) least = h;
	}
	return least;
}
