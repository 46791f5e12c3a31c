import { describe, expect, it } from 'vitest';
import { crestLines } from '../../../src/lib/domain/mesh/crestLines';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { ellipticCone } from './shapes';

const straight: ToothForm = {
	crownHeight_mm: 30,
	baseLength_mm: 12,
	baseWidth_mm: 12,
	sections: [{ at: 0, shape: 'round' }],
	taper: 'cone',
	curve: { distal_deg: 0, lingual_deg: 0, startsAt: 0 },
	tipRadius_mm: 0.5,
	carinae: [],
	root: { state: 'none' },
};
const crests = (change: Partial<ToothForm>) => {
	const made = sculpt({ ...straight, ...change });
	if (!made.ok) throw new Error(JSON.stringify(made.problem));
	return crestLines(made.value.mesh, 200);
};

describe('crestLines', () => {
	it('follow each cutting edge along its own side', () => {
		const lines = crests({
			carinae: [
				{ where: 'mesial', prominence_mm: 0.5, from: 0 },
				{ where: 'distal', prominence_mm: 0.5, from: 0 },
			],
		}).filter(({ points }) => points.length > 90);
		expect(lines.map(({ kind }) => kind)).toEqual(['edge', 'edge']);
		const sides = lines.map(({ points }) => {
			for (let i = 2; i < points.length; i += 3) expect(Math.abs(points[i])).toBeLessThan(0.3);
			return Math.sign(points[0]);
		});
		expect(sides.sort()).toEqual([-1, 1]);
	});

	it('follow each ridge at the angle where it was put, facing outwards', () => {
		const lines = crests({
			ridges: { count: 12, height_mm: 0.25, sides: 'all', from: 0.1, to: 0.7, alternating: false },
		});
		expect(lines).toHaveLength(12);
		for (const { kind, points, normals } of lines) {
			expect(kind).toBe('ridge');
			const angles: number[] = [];
			for (let i = 0; i < points.length; i += 3) {
				angles.push((Math.atan2(points[i + 2], points[i]) * 180) / Math.PI);
				expect(points[i] * normals[i] + points[i + 2] * normals[i + 2]).toBeGreaterThan(0);
			}
			// twelve ridges, the first half a gap from distal: 15, 45, 75 ... degrees
			for (const angle of angles) expect(Math.abs(((angle + 360 - 15) % 30) - 15)).toBeGreaterThan(12.5);
		}
	});

	it('are unknown where the mesh says nothing of regions', () =>
		expect(crestLines(ellipticCone(5, 5, [0, 20, 0]), 50)).toEqual([]));
});
