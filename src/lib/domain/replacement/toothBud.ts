import type { TriMesh } from '../mesh/triMesh';
import { skin, type Ring } from '../tooth/skin';
import type { LifeForm } from './lifeForm';

/** A germ before it has hard tissue: a small soft ball that grows, its top where the tip will be. Region `pulp`. */
export function toothBud(form: LifeForm, below: number): TriMesh {
	const size = form.halfWidth_mm * (0.3 + 1.1 * below);
	const middle = form.crownHeight_mm - size;
	const [COLUMNS, ROWS] = [24, 12];
	const rings: Ring[] = [];
	for (let i = 1; i < ROWS; i++) {
		const polar = (Math.PI * i) / ROWS;
		const points = new Float64Array(3 * COLUMNS);
		for (let j = 0; j < COLUMNS; j++) {
			const angle = (2 * Math.PI * (j + 0.5)) / COLUMNS;
			points[3 * j] = size * Math.sin(polar) * Math.cos(angle);
			points[3 * j + 1] = middle + size * Math.cos(polar);
			points[3 * j + 2] = -form.lean_mm + size * Math.sin(polar) * Math.sin(angle);
		}
		rings.push({ points, below: 'pulp' });
	}
	const pole = (y: number) => [0, y, -form.lean_mm] as const;
	return skin(pole(middle + size), 'pulp', rings, pole(middle - size));
}
