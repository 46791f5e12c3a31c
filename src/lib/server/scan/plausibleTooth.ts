/*
 * What tells one tooth from a skull, a jaw or a row of teeth, tried on single crowns, fangs turned by up to 180 degrees,
 * molars, rooted teeth, rows of cones and a skull:
 * - Fill: areas of the sections square to an axis over those of their convex outlines. A tooth fills at least 0.8 along
 *   its best axis and 0.33 along the product of all three (a rooted tooth with a curved root); a skull 0.66 and 0.22.
 * - Handles (genus): CT scans of sound teeth may have hundreds of tiny ones, and roots with open canals some, so
 *   they count only in a piece that is also badly filled.
 * - Cusps and roots give up to four outlines in one section; five and more at many heights are teeth in a row.
 */
import type { MeasureWarning } from '../../domain/measure/crownMeasures';
import { convexHull2d } from '../../domain/mesh/convexHull2d';
import { planeFrame } from '../../domain/mesh/planeFrame';
import { polygonArea } from '../../domain/mesh/polygonArea';
import { principalAxes } from '../../domain/mesh/principalAxes';
import { heightsAlong, section } from '../../domain/mesh/section';
import { topology, type Topology } from '../../domain/mesh/topology';
import type { TriMesh } from '../../domain/mesh/triMesh';

const DOUBT = 'This is hardly one tooth, and the measures of a crown mean little:';
const SLICES = 12;
/** least fill along the best axis, of a piece badly filled along the others too */
const LEAST_BEST_FILL = 0.75;
const LEAST_FILL_BESIDE = 0.35;
/** least product of the fills along three axes */
const LEAST_FILL = 0.2;
const MOST_HANDLES = 2;
const LEAST_FILL_WITH_HANDLES = 0.3;
/** share of the whole surface from which on a separate piece counts */
const PIECE_SHARE = 0.15;
const MOST_OUTLINES = 4;
const SLICES_WITH_MANY = 4;

/** Says why a welded mesh is hardly one tooth, in plain words and as data; null when it may well be one. */
export function plausibleTooth(welded: TriMesh): Required<Pick<MeasureWarning, 'message' | 'doubt'>> | null {
	const shape = topology(welded);
	const pieces = piecesApart(welded, shape);
	if (pieces > 1) {
		return {
			message: `${DOUBT} it has ${pieces} separate pieces of like size.`,
			doubt: { is: 'pieces', n: pieces },
		};
	}
	const fills = fillsAlong(welded);
	const product = fills.reduce((all, { fill }) => all * fill, 1);
	const best = Math.max(...fills.map(({ fill }) => fill));
	const handles = Math.floor(genus(welded, shape));
	if (handles > MOST_HANDLES && product < LEAST_FILL_WITH_HANDLES) {
		return {
			message: `${DOUBT} it has ${handles} openings right through it and wide hollows, as a skull or a jaw has.`,
			doubt: { is: 'openings', n: handles },
		};
	}
	if (product < LEAST_FILL || (best < LEAST_BEST_FILL && product < LEAST_FILL_BESIDE)) {
		return { message: `${DOUBT} most of the space that it spans is empty.`, doubt: { is: 'hollow' } };
	}
	if (fills.some(({ many }) => many >= SLICES_WITH_MANY)) {
		return {
			message: `${DOUBT} cut across, it falls into five or more parts, as a row of teeth does.`,
			doubt: { is: 'row' },
		};
	}
	return null;
}

/** Pieces with a fair share of the surface that do not lie inside the box of another, as a pulp's wall does. */
function piecesApart({ positions: p, indices }: TriMesh, { components, componentOf }: Topology): number {
	if (components < 2) return 1;
	const areas = new Float64Array(components);
	const low = new Float64Array(components * 3).fill(Infinity);
	const high = new Float64Array(components * 3).fill(-Infinity);
	for (let k = 0; k < indices.length; k += 3) {
		const piece = componentOf[k / 3];
		const [a, b, c] = [indices[k] * 3, indices[k + 1] * 3, indices[k + 2] * 3];
		for (const corner of [a, b, c]) {
			for (let axis = 0; axis < 3; axis++) {
				const at = piece * 3 + axis;
				low[at] = Math.min(low[at], p[corner + axis]);
				high[at] = Math.max(high[at], p[corner + axis]);
			}
		}
		const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
		const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
		areas[piece] += Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
	}
	const total = areas.reduce((sum, area) => sum + area, 0);
	const large = [...areas.keys()].filter((piece) => areas[piece] > PIECE_SHARE * total);
	const within = (inner: number, outer: number): boolean =>
		[0, 1, 2].every((axis) => {
			const middle = (low[inner * 3 + axis] + high[inner * 3 + axis]) / 2;
			return middle > low[outer * 3 + axis] && middle < high[outer * 3 + axis];
		});
	const apart = large.filter((piece) =>
		large.every((other) => other === piece || areas[other] < areas[piece] || !within(piece, other)),
	);
	return Math.max(1, apart.length);
}

function fillsAlong(mesh: TriMesh): { fill: number; many: number }[] {
	const { axes, centroid } = principalAxes(mesh);
	return axes.map((axis) => {
		const frame = planeFrame(centroid, axis);
		const heights = heightsAlong(mesh, frame);
		let low = Infinity;
		let high = -Infinity;
		for (const height of heights) {
			if (height < low) low = height;
			if (height > high) high = height;
		}
		let filled = 0;
		let spanned = 0;
		let many = 0;
		for (let i = 0; i < SLICES; i++) {
			const loops = section(mesh, frame, low + ((high - low) * (i + 0.5)) / SLICES, heights).filter(
				({ hole }) => !hole,
			);
			if (loops.length === 0) continue;
			filled += loops.reduce((sum, { area }) => sum + area, 0);
			spanned += Math.abs(polygonArea(convexHull2d(joined(loops.map(({ points }) => points)))));
			if (loops.filter(({ area }) => area > loops[0].area * 0.1).length > MOST_OUTLINES) many++;
		}
		return { fill: spanned > 0 ? Math.min(1, filled / spanned) : 1, many };
	});
}

function joined(lists: readonly Float64Array[]): Float64Array {
	const out = new Float64Array(lists.reduce((sum, list) => sum + list.length, 0));
	let at = 0;
	for (const list of lists) {
		out.set(list, at);
		at += list.length;
	}
	return out;
}

/** Handles of all pieces together, from Euler's formula with each opening closed by a lid. */
function genus({ positions, indices }: TriMesh, { edges, components, boundaryLoops }: Topology): number {
	const euler = positions.length / 3 - edges + indices.length / 3;
	return (2 * components - boundaryLoops.length - euler) / 2;
}
