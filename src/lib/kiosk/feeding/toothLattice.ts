/** Teeth for every place in the triangle: a lattice of them, made from their forms, and what lies between blended. */
import { formAt } from '../../domain/feeding/formAt';
import { MIDDLE, type Corner, type Position } from '../../domain/feeding/position';
import type { Thresholds } from '../../domain/feeding/thresholds';
import { blendGrids } from '../../domain/tooth/blendGrids';
import type { ToothForm } from '../../domain/tooth/form';
import { gridColumns, sculptGrid, type GridTooth } from '../../domain/tooth/sculptGrid';

/** Steps along a side: 28 teeth, between which a blend is hard to tell from a tooth made for the place. */
const STEPS = 6;
/** Crown height in the middle, mm, and how far slender crowns are taller than stout ones, so that all look equally heavy. */
const MIDDLE_HEIGHT_mm = 36;
const SLENDER_POWER = 0.4;
const ROOT_SHARE = 0.42;

const AT_CORNER: Readonly<Record<Corner, Position>> = {
	pierce: { pierce: 1, cut: 0, crush: 0 },
	cut: { pierce: 0, cut: 1, crush: 0 },
	crush: { pierce: 0, cut: 0, crush: 1 },
};

/** With a plain root, as the grid wants it. */
export const rooted = (form: ToothForm): ToothForm => ({
	...form,
	root: { state: 'full', length_mm: ROOT_SHARE * form.crownHeight_mm, swelling: 1.02, folded: false },
});

interface Bounds {
	min: [number, number, number];
	max: [number, number, number];
}

export class ToothLattice {
	#thresholds: Thresholds;
	#columns: number[];
	#bounds: Bounds | null = null;
	#nodes = new Map<string, GridTooth>();

	constructor(thresholds: Thresholds) {
		this.#thresholds = thresholds;
		this.#columns = gridColumns(this.formOf(AT_CORNER.cut));
	}

	/** Columns over which all its teeth are made: others made over them can be blended with these. */
	get columns(): readonly number[] {
		return this.#columns;
	}

	/** The form for a place in its own size: slender ones taller, stout ones lower. */
	formOf(place: Position): ToothForm {
		const unit = formAt(place, MIDDLE_HEIGHT_mm, this.#thresholds);
		const slender = unit.crownHeight_mm / unit.baseLength_mm;
		const middle = formAt(MIDDLE, MIDDLE_HEIGHT_mm, this.#thresholds);
		const ratio = (slender * middle.baseLength_mm) / middle.crownHeight_mm;
		return formAt(place, MIDDLE_HEIGHT_mm * ratio ** SLENDER_POWER, this.#thresholds);
	}

	/** The tooth made for a form over the lattice's columns. Throws on a form that cannot be sculpted. */
	make(form: ToothForm): GridTooth {
		const tooth = sculptGrid(rooted(form), this.#columns);
		if (!tooth.ok) throw new Error(`ToothLattice: ${tooth.problem.code} at ${tooth.problem.path}`);
		return tooth.value;
	}

	corner(name: Corner): GridTooth {
		return this.at(AT_CORNER[name]);
	}

	/** Room that every tooth of the triangle fits into at its own size, mm. */
	get bounds(): Bounds {
		if (this.#bounds) return this.#bounds;
		const teeth = (['pierce', 'cut', 'crush'] as const).map((name) => this.corner(name));
		let [low, high, out] = [0, 0, 0];
		for (const { mesh } of teeth)
			for (let i = 0; i < mesh.positions.length; i += 3) {
				low = Math.min(low, mesh.positions[i + 1]);
				high = Math.max(high, mesh.positions[i + 1]);
				// the view makes room for the box's diagonal: a round tooth needs no more than its side
				out = Math.max(out, Math.hypot(mesh.positions[i], mesh.positions[i + 2]) / Math.SQRT2);
			}
		this.#bounds = { min: [-out, low, -out], max: [out, high, out] };
		return this.#bounds;
	}

	/** The tooth at a place. Teeth of the lattice are made when first needed; `warm` makes them beforehand. */
	at(place: Position): GridTooth {
		const shares = [place.pierce, place.cut, place.crush].map((share) => share * STEPS);
		const low = shares.map((share) => Math.min(STEPS, Math.floor(share + 1e-9)));
		const rest = shares.map((share, i) => Math.max(0, share - low[i]));
		const missing = STEPS - low[0] - low[1] - low[2];
		// one step is missing: corners that add it; two: corners that lack one
		const corners =
			missing <= 0
				? [{ node: low, weight: 1 }]
				: [0, 1, 2].map((k) => ({
						node: low.map((n, i) => (missing === 1 ? (i === k ? n + 1 : n) : i === k ? n : n + 1)),
						weight: missing === 1 ? rest[k] : 1 - rest[k],
					}));
		const used = corners.filter(({ weight }) => weight > 1e-6);
		const sum = used.reduce((total, { weight }) => total + weight, 0);
		return blendGrids(
			used.map(({ node }) => this.#node(node)),
			used.map(({ weight }) => weight / sum),
		);
	}

	/** Makes one more tooth of the lattice, from the corners inwards; false when all are there. */
	warm(): boolean {
		for (let a = 0; a <= STEPS; a++)
			for (let b = 0; a + b <= STEPS; b++) {
				const node = [a, b, STEPS - a - b];
				if (this.#nodes.has(node.join())) continue;
				this.#node(node);
				return true;
			}
		return false;
	}

	#node(node: readonly number[]): GridTooth {
		const key = node.join();
		let tooth = this.#nodes.get(key);
		if (!tooth) {
			const [pierce, cut, crush] = node.map((n) => n / STEPS);
			tooth = this.make(this.formOf({ pierce, cut, crush }));
			this.#nodes.set(key, tooth);
		}
		return tooth;
	}
}
