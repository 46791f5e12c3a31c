import { beforeAll, describe, expect, it } from 'vitest';
import path from 'node:path';
import { loadContent } from '../../../src/lib/content/loadContent';
import { fsReader } from '../../../src/lib/server/fsReader';
import { MIDDLE, type Position } from '../../../src/lib/domain/feeding/position';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import { isClosed } from '../../../src/lib/domain/tooth/isClosed';
import { ToothLattice } from '../../../src/lib/kiosk/feeding/toothLattice';

// the exhibit's own thresholds: what visitors drag through
let lattice: ToothLattice;
beforeAll(async () => {
	const { draft } = await loadContent(fsReader(path.resolve('content')));
	if (!draft?.feeding) throw new Error('the exhibit has no feeding folder');
	lattice = new ToothLattice(draft.feeding.thresholds);
}, 30_000);

const place = (pierce: number, cut: number, crush: number): Position => ({ pierce, cut, crush });
const farthest = (a: Float32Array, b: Float32Array) => {
	let most = 0;
	for (let i = 0; i < a.length; i += 3)
		most = Math.max(most, Math.hypot(a[i] - b[i], a[i + 1] - b[i + 1], a[i + 2] - b[i + 2]));
	return most;
};

describe('toothLattice', () => {
	it('makes 28 teeth, once each', () => {
		let made = 0;
		while (lattice.warm()) made++;
		expect(made).toBeLessThanOrEqual(28);
		expect(lattice.warm()).toBe(false);
	});

	it('is a needle, a two-edged blade and a dome at its corners', () => {
		const of = (corner: 'pierce' | 'cut' | 'crush') => {
			const { mesh, marks } = lattice.corner(corner);
			const measured = measureCrown(mesh, { marks });
			if (!measured.ok) throw new Error(measured.problem.code);
			return measured.value;
		};
		const [needle, blade, dome] = [of('pierce'), of('cut'), of('crush')];
		expect(needle.crownHeightRatio).toBeGreaterThan(2.8);
		expect(needle.carinaCount).toBe(0);
		expect(blade.crownBaseRatio).toBeLessThan(0.6);
		expect(blade.carinaCount).toBe(2);
		expect(dome.crownHeightRatio).toBeLessThan(1.3);
		expect(dome.tipRadius_mm! / (dome.crownBaseWidth_mm / 2)).toBeGreaterThan(0.4);
	});

	it('changes without a step, wherever it is dragged', () => {
		const steps = 120;
		let before = lattice.at(place(1, 0, 0)).mesh.positions;
		for (let i = 1; i <= steps; i++) {
			const t = i / steps;
			// once round through the middle of the triangle
			const at = t < 0.5 ? place(1 - 2 * t, 1.2 * t, 0.8 * t) : place(0, 1.2 * (1 - t), 1 - 1.2 * (1 - t));
			const now = lattice.at(at).mesh.positions;
			expect(farthest(before, now)).toBeLessThan(1.2);
			before = now;
		}
	});

	it('stays within 4 % of its height of the tooth made for a place', () => {
		for (const at of [place(0.55, 0.3, 0.15), place(0.1, 0.72, 0.18), place(0.25, 0.25, 0.5)]) {
			const own = lattice.make(lattice.formOf(at));
			const off_mm = farthest(own.mesh.positions, lattice.at(at).mesh.positions);
			expect(off_mm / own.marks.apex[1]).toBeLessThan(0.04);
		}
	});

	it('is closed everywhere and fits into the room that it asks for', () => {
		const { min, max } = lattice.bounds;
		for (const at of [
			MIDDLE,
			place(0.5, 0.5, 0),
			place(0, 0.5, 0.5),
			place(0.5, 0, 0.5),
			place(0.8, 0.1, 0.1),
		]) {
			const { mesh } = lattice.at(at);
			expect(isClosed(mesh)).toBe(true);
			for (let i = 1; i < mesh.positions.length; i += 3) {
				expect(mesh.positions[i]).toBeGreaterThanOrEqual(min[1] - 0.5);
				expect(mesh.positions[i]).toBeLessThanOrEqual(max[1] + 0.5);
			}
		}
	});
});
