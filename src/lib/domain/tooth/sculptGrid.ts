import { regionIndex, type TriMesh } from '../mesh/triMesh';
import { fail, ok, type Result } from '../result';
import type { Vec3 } from '../vec3';
import { checkForm } from './checkForm';
import { columnAngles } from './columns';
import { crownShape } from './crownShape';
import type { FormProblem, ToothForm } from './form';
import { lowerRings } from './lowerRings';
import { relief } from './relief';
import { rootWall } from './rootWall';
import type { SculptedMarks } from './sculpt';

/** Rings of the crown from the tip (left out) to the base, and columns as `columnAngles` shares them out. */
export const GRID_ROWS = 46;
const GRID_COLUMNS = { plain: 46, perEdge: 9, perRidge: 3 } as const;
/** rings of the root, whatever its length */
const ROOT_RINGS = 12;
/** how much closer rings lie towards the tip: depth = length * share ^ this */
const TOWARDS_TIP = 1.9;

/** A tooth on a grid: teeth of one `columns` have the same topology and can be blended point by point. */
export interface GridTooth {
	mesh: TriMesh;
	marks: SculptedMarks;
	/** points to a ring */
	columns: number;
	/** first vertex of a ring of the crown, 0 = next to the tip, GRID_ROWS - 1 = base */
	ringStart(row: number): number;
}

/** Section angles that suit every two-edged form, radians; two-edged blades get their edges on columns. */
export const gridColumns = (form: ToothForm): number[] => columnAngles(form, GRID_COLUMNS);

/**
 * Makes a tooth with a solid full root on a fixed grid, without wear, serrations, pulp or neck. The same `columns` give the same
 * triangles for every form: about 8,000. Its surface lies on that of `sculpt` wherever a point of the grid does.
 */
export function sculptGrid(form: ToothForm, columns: readonly number[]): Result<GridTooth, FormProblem> {
	const problem = checkForm(form);
	if (problem) return fail(problem);
	if (form.root.state !== 'full') return fail({ code: 'out-of-range', path: 'root.state' });
	const n = columns.length;
	const shape = crownShape(form, columns, (trial) => {
		const smooth = relief(form, trial, []);
		return (column, u) => smooth.at(column, u).height_mm;
	});
	const surface = relief(form, shape, []);
	const rings: ArrayLike<number>[] = [];
	for (let row = 1; row <= GRID_ROWS; row++) {
		const u = shape.length_mm * (row / GRID_ROWS) ** TOWARDS_TIP;
		const { centre, distal, labial } = shape.line.at(shape.length_mm - u);
		const points = new Float64Array(3 * n);
		for (let j = 0; j < n; j++) {
			const [x, z] = shape.sectionPoint(j, u);
			const grown = 1 + surface.at(j, u).height_mm / Math.max(1e-9, Math.hypot(x, z));
			for (let k = 0; k < 3; k++) points[3 * j + k] = centre[k] + (x * distal[k] + z * labial[k]) * grown;
		}
		rings.push(points);
	}
	const base = columns.map((_, j) => shape.sectionPoint(j, shape.length_mm));
	const wall = rootWall(form, base)!;
	const lower = lowerRings(form, shape, wall, {
		spacing_mm: wall.length_mm / ROOT_RINGS,
		cavityRings: 1,
		coarse: true,
	});
	rings.push(...lower.rings.map(({ points }) => points));

	const apex = shape.line.at(shape.length_mm).centre;
	const positions = new Float32Array(3 * (n * rings.length + 2));
	positions.set(apex, 0);
	rings.forEach((points, i) => positions.set(points, 3 * (1 + i * n)));
	positions.set(lower.pole, 3 * (1 + n * rings.length));
	const ringStart = (row: number) => 1 + row * n;
	const end = (angle: number): Vec3 => {
		const j = columns.reduce(
			(best, a, i) => (Math.abs(a - angle) < Math.abs(columns[best] - angle) ? i : best),
			0,
		);
		const [x, z] = base[j];
		return [x, 0, z];
	};
	return ok({
		mesh: { positions, ...gridSkin(n, rings.length) },
		marks: { apex, baseMesial: end(Math.PI), baseDistal: end(0), labial: [0, 0, 1] },
		columns: n,
		ringStart,
	});
}

/** Triangles between two poles and `rings` rings of `n` points, outward when the first pole is the tip. */
function gridSkin(n: number, rings: number): { indices: Uint32Array; regions: Uint8Array } {
	const indices: number[] = [];
	const regions: number[] = [];
	const [enamel, root] = [regionIndex('enamel'), regionIndex('root')];
	const add = (p: number, q: number, r: number, row: number) => {
		indices.push(p, q, r);
		regions.push(row < GRID_ROWS ? enamel : root);
	};
	for (let j = 0; j < n; j++) add(0, 1 + ((j + 1) % n), 1 + j, 0);
	for (let i = 0; i + 1 < rings; i++)
		for (let j = 0; j < n; j++) {
			const k = (j + 1) % n;
			const [a, b] = [1 + i * n + j, 1 + i * n + k];
			// diagonals lean towards the edges' columns from both sides
			const leans = j < n / 4 || (j >= n / 2 && j < (3 * n) / 4);
			if (leans) {
				add(a, b, b + n, i + 1);
				add(a, b + n, a + n, i + 1);
			} else {
				add(a, b, a + n, i + 1);
				add(b, b + n, a + n, i + 1);
			}
		}
	const last = 1 + n * rings;
	const end = last - n;
	for (let j = 0; j < n; j++) add(end + j, end + ((j + 1) % n), last, rings);
	return { indices: Uint32Array.from(indices), regions: Uint8Array.from(regions) };
}
