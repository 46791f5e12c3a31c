import { describe, expect, it } from 'vitest';
import type { ToothForm } from '../../../src/lib/domain/tooth/form';
import { enclosedVolume, plainForm, sculpted, sectionExtent } from './helpers';

/** Forms whose solids have closed formulas. Volumes: common practice, no source (school geometry). */
describe('sculpt against closed formulas', () => {
	const volumeOf = (form: ToothForm) => enclosedVolume(sculpted(form).mesh);

	it.each([
		[40, 20],
		[12, 9],
		[90, 25],
	])('straight round cone %d mm high, %d mm wide, almost sharp: pi r^2 h / 3', (h, d) => {
		const form = plainForm({ crownHeight_mm: h, baseLength_mm: d, baseWidth_mm: d, tipRadius_mm: 0.002 * d });
		expect(Math.abs(volumeOf(form) / ((Math.PI * (d / 2) ** 2 * h) / 3) - 1)).toBeLessThan(0.01);
	});

	it('straight round cone with a blunt tip: frustum and spherical cap', () => {
		const [h, R, r] = [40, 10, 2];
		// the cone's sides touch the sphere of radius r whose top is at h: half angle a with tan a = R / (h + r/sin a - r)
		let a = Math.atan(R / h);
		for (let i = 0; i < 50; i++) a = Math.atan(R / (h + r / Math.sin(a) - r));
		const touch = r * Math.cos(a);
		const cap = r * (1 - Math.sin(a));
		const frustum = (Math.PI / 3) * (h - cap) * (R * R + R * touch + touch * touch);
		const volume = frustum + (Math.PI / 3) * cap * cap * (3 * r - cap);
		expect(Math.abs(volumeOf(plainForm({ tipRadius_mm: r })) / volume - 1)).toBeLessThan(0.004);
	});

	it('elliptic cone: pi a b h / 3', () => {
		const form = plainForm({ baseWidth_mm: 12, tipRadius_mm: 0.03 });
		expect(Math.abs(volumeOf(form) / ((Math.PI * 10 * 6 * 40) / 3) - 1)).toBeLessThan(0.01);
	});

	it('dome: half an ellipsoid, 2/3 pi a b h', () => {
		const form = plainForm({ crownHeight_mm: 12, baseWidth_mm: 16, taper: 'dome', tipRadius_mm: 2 });
		expect(Math.abs(volumeOf(form) / ((2 / 3) * Math.PI * 10 * 8 * 12) - 1)).toBeLessThan(0.01);
	});

	it('lens of two parabolic arcs over a cone: 8/3 a b is its base, a third of base times height its volume', () => {
		const form = plainForm({ baseWidth_mm: 10, sections: [{ at: 0, shape: 'blade' }], tipRadius_mm: 0.03 });
		expect(Math.abs(volumeOf(form) / ((((8 / 3) * 10 * 5) / 3) * 40) - 1)).toBeLessThan(0.01);
	});

	it('a round tip is a piece of a sphere of the radius given', () => {
		const { mesh } = sculpted(plainForm({ baseWidth_mm: 14, tipRadius_mm: 2 }));
		// half width of a sphere's section d below its top: sqrt(d (2 r - d))
		for (const d of [0.1, 0.4, 0.8]) {
			const half = Math.sqrt(d * (4 - d));
			const { length_mm, width_mm } = sectionExtent(mesh, 40 - d);
			expect(Math.abs(length_mm / 2 / half - 1)).toBeLessThan(0.03);
			expect(Math.abs(width_mm / 2 / half - 1)).toBeLessThan(0.03);
		}
	});

	it('tapers differ in order: needle, cone, bullet, dome', () => {
		const volumes = (['needle', 'cone', 'bullet', 'dome'] as const).map((taper) =>
			volumeOf(plainForm({ taper })),
		);
		expect([...volumes].sort((a, b) => a - b)).toEqual(volumes);
	});

	it('a form k times as large gives positions k times as large', () => {
		const k = 3;
		const small = plainForm({
			sections: [
				{ at: 0, shape: 'oval' },
				{ at: 0.8, shape: 'blade' },
			],
			curve: { distal_deg: 25, lingual_deg: 10, startsAt: 0.1 },
			carinae: [{ where: 'distal', prominence_mm: 0.5, from: 0.1 }],
			ridges: { count: 8, height_mm: 0.3, sides: 'lingual', from: 0.1, to: 0.8, alternating: true },
			neck: { constriction: 0.1, length_mm: 2 },
			root: { state: 'resorbed', length_mm: 5, pitSide: 'lingual', pitDepth_mm: 3 },
			pulp: { height_mm: 8, opening: 0.5 },
		});
		const large: ToothForm = {
			...small,
			crownHeight_mm: 40 * k,
			baseLength_mm: 20 * k,
			baseWidth_mm: 20 * k,
			tipRadius_mm: 0.5 * k,
			carinae: [{ where: 'distal', prominence_mm: 0.5 * k, from: 0.1 }],
			ridges: { count: 8, height_mm: 0.3 * k, sides: 'lingual', from: 0.1, to: 0.8, alternating: true },
			neck: { constriction: 0.1, length_mm: 2 * k },
			root: { state: 'resorbed', length_mm: 5 * k, pitSide: 'lingual', pitDepth_mm: 3 * k },
			pulp: { height_mm: 8 * k, opening: 0.5 },
		};
		const [a, b] = [sculpted(small).mesh, sculpted(large).mesh];
		expect(b.positions.length).toBe(a.positions.length);
		let worst = 0;
		for (let i = 0; i < a.positions.length; i++)
			worst = Math.max(worst, Math.abs(b.positions[i] - k * a.positions[i]));
		expect(worst).toBeLessThan(1e-3);
	});
});
