import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendingStress } from '../../src/lib/domain/feeding/bendingStress';
import { breakingForce } from '../../src/lib/domain/feeding/breakingForce';
import { chipForce } from '../../src/lib/domain/feeding/chipForce';
import { contactArea_mm2, roundIndenter } from '../../src/lib/domain/feeding/contactArea';
import { coneBeam, diametersAt } from '../../src/lib/domain/feeding/crownBeam';
import { ellipseSection } from '../../src/lib/domain/feeding/ellipseSection';
import { contactModulus_GPa, hertzContact } from '../../src/lib/domain/feeding/hertzContact';
import { includedAngle_deg } from '../../src/lib/domain/feeding/includedAngle';
import { punctureForce_N } from '../../src/lib/domain/feeding/punctureForce';
import type { FoodMaterial } from '../../src/lib/domain/feeding/prey';
import { ridgeStress } from '../../src/lib/domain/feeding/ridgeStress';
import { shellCrackForce } from '../../src/lib/domain/feeding/shellCrackForce';
import { linesToMillimetres, poundsToNewtons, psiToMegapascals } from '../../src/lib/domain/feeding/units';

const square = { angle_deg: 90, plane: 'LL', force_N: 1000 } as const;

describe('crown as a beam', () => {
	// Section formulas: Van Valkenburgh & Ruff 1987, J. Zool. 212: 379-397. Lengths (CBL, CBW, CH): Hendrickx et al. 2024,
	// J. Vert. Paleontol., crown-measurement sheet; Mosasaurus: Leidy 1865, Cretaceous Reptiles of the United States, p. 63.
	// Z and stress at 1,000 N worked out from them by hand.
	it.each([
		['Tyrannosaurus mx05', 45.46, 32.63, 94.06, 6620.3, 4751.9, 14.21, 19.79],
		['Carcharodontosaurus mx03', 41.46, 15.15, 71.01, 2556.7, 934.2, 27.77, 76.01],
		['Suchomimus G67-1', 18.6, 14.9, 48.5, 506.1, 405.4, 95.84, 119.63],
		['Mosasaurus, Leidy', 25.4, 21.17, 38.1, 1340.7, 1117.2, 28.42, 34.1],
		['cone 20 x 40 mm', 20, 20, 40, 785.4, 785.4, 50.93, 50.93],
	])('%s: section moduli and stress at the base', (_, length, width, height, zMD, zLL, sMD, sLL) => {
		const section = ellipseSection(length, width);
		expect(section.Z_MD_mm3).toBeCloseTo(zMD, 0);
		expect(section.Z_LL_mm3).toBeCloseTo(zLL, 0);
		const beam = coneBeam(0, length, height, width / length);
		expect(bendingStress(beam, { ...square, plane: 'MD' }).base.bending_MPa).toBeCloseTo(sMD, 1);
		expect(bendingStress(beam, square).base.bending_MPa).toBeCloseTo(sLL, 1);
	});

	// textbook identities
	it('Z_LL over Z_MD is CBR, whatever the ellipse; twice the size at one force is a quarter of the stress', () => {
		const mm = fc.double({ min: 0.1, max: 200, noNaN: true });
		fc.assert(
			fc.property(mm, mm, (length, width) => {
				const { Z_LL_mm3, Z_MD_mm3 } = ellipseSection(length, width);
				expect(Z_LL_mm3 / Z_MD_mm3).toBeCloseTo(width / length, 9);
				const stress = (k: number) =>
					bendingStress(coneBeam(0, length * k, 40 * k, width / length), square).base.bending_MPa;
				expect(stress(2) / stress(1)).toBeCloseTo(0.25, 9);
			}),
		);
	});

	it('the second moment is the modulus times the half diameter', () => {
		const section = ellipseSection(12, 8);
		expect(section.I_MD_mm4).toBeCloseTo(section.Z_MD_mm3 * 6, 9);
		expect(section.I_LL_mm4).toBeCloseTo(section.Z_LL_mm3 * 4, 9);
	});

	// truncated cone: by calculus the stress peaks where the diameter is 1.5 times the tip's, at
	// 1.509 F h / (d_t^2 (d_0 - d_t)); tip 4, base 20, height 40 mm, 1,000 N: 235.8 MPa at 5.0 mm, base 50.9 MPa
	it('a truncated cone snaps near its tip', () => {
		const beam = coneBeam(4, 20, 40);
		const { peak, base } = bendingStress(beam, square);
		expect(peak.bending_MPa).toBeCloseTo(235.8, 1);
		expect(peak.below_mm).toBeCloseTo(5, 3);
		expect(diametersAt(beam, peak.below_mm).length_mm).toBeCloseTo(6, 3);
		expect(base.bending_MPa).toBeCloseTo(50.9, 1);
	});

	it('the peak lies where the diameter is 1.5 times the tip diameter, for any truncated cone', () => {
		const tip = fc.double({ min: 0.2, max: 5, noNaN: true });
		const wider = fc.double({ min: 1.7, max: 12, noNaN: true });
		const height = fc.double({ min: 5, max: 120, noNaN: true });
		fc.assert(
			fc.property(tip, wider, height, (d, times, h) => {
				const beam = coneBeam(d, d * times, h);
				const { peak } = bendingStress(beam, square);
				expect(diametersAt(beam, peak.below_mm).length_mm / d).toBeCloseTo(1.5, 3);
				const formula = (1.509 * 1000 * h) / (d ** 2 * (d * times - d));
				expect(peak.bending_MPa / formula).toBeCloseTo(1, 3);
			}),
		);
	});

	// 338 MPa: Freeman & Lemen 2006-2007, J. Zool. (canines of carnivorans); plain cone 20 x 40 mm: 6,637 N
	it('the plain cone breaks at 6,637 N', () => {
		const stress = bendingStress(coneBeam(0, 20, 40), { ...square, force_N: 6637 });
		expect(stress.base.bending_MPa).toBeCloseTo(338, 1);
		expect((338 * ellipseSection(20, 20).Z_MD_mm3) / 40).toBeCloseTo(6637, -0.5);
	});

	it('breaks at the force whose peak is the strength', () => {
		const beam = coneBeam(4, 20, 40);
		const { force_N, below_mm } = breakingForce(beam, { angle_deg: 90, plane: 'LL' }, 338);
		expect(force_N).toBeCloseTo((338 / 235.8) * 1000, -1);
		expect(below_mm).toBeCloseTo(5, 3);
		expect(breakingForce(beam, { angle_deg: 0, plane: 'LL' }, 338).force_N).toBe(Infinity);
	});

	it('a force straight down only presses: F over the area', () => {
		const { base } = bendingStress(coneBeam(4, 20, 40), { force_N: 1000, angle_deg: 0, plane: 'MD' });
		expect(base.tension_MPa).toBeCloseTo(-1000 / (Math.PI * 100), 6);
	});

	it('says that a stubby crown is no beam', () => {
		const codes = (height: number) =>
			bendingStress(coneBeam(2, 20, height), square).notes.map(({ code }) => code);
		expect(codes(20)).toEqual(['stubby-beam']);
		expect(codes(60)).toEqual([]);
	});
});

describe('elastic contact', () => {
	// Hertz, textbook. E 80 and 20 GPa, nu 0.3 (recalled inputs; the arithmetic is checked): E* 17.58 GPa; 100 N on R 1 mm: a
	// 0.1622 mm, p0 1,815 MPa, mean 1,210, depth 0.0263 mm, edge tension 242 MPa; R 0.5: 2,882, R 2: 1,144, R 5: 621 MPa
	const modulus = contactModulus_GPa({ E_GPa: 80, nu: 0.3 }, { E_GPa: 20, nu: 0.3 });

	it('100 N on a tip of 1 mm', () => {
		expect(modulus).toBeCloseTo(17.58, 2);
		const contact = hertzContact(100, 1, modulus);
		expect(contact.radius_mm).toBeCloseTo(0.1622, 4);
		expect(contact.p0_MPa).toBeCloseTo(1815, -0.5);
		expect(contact.pMean_MPa).toBeCloseTo(1210, -0.5);
		expect(contact.depth_mm).toBeCloseTo(0.0263, 4);
		expect(contact.edgeTension_MPa).toBeCloseTo(242, 0);
	});

	it.each([
		[0.5, 2882],
		[2, 1144],
		[5, 621],
	])('tip of %d mm: %d MPa', (radius, p0) => {
		expect(hertzContact(100, radius, modulus).p0_MPa).toBeCloseTo(p0, -0.5);
	});

	it('p0 goes with F^(1/3) and R^(-2/3)', () => {
		const p0 = (force: number, radius: number) => hertzContact(force, radius, modulus).p0_MPa;
		expect(p0(800, 1) / p0(100, 1)).toBeCloseTo(2, 9);
		expect(p0(800, 1)).toBeCloseTo(3631, -0.5);
		expect(p0(100, 2) / p0(100, 1)).toBeCloseTo(0.63, 3);
		// force for a set pressure goes with R^2
		expect(p0(400, 2)).toBeCloseTo(p0(100, 1), 9);
	});

	it('says when bone would have yielded long ago (about 1 GPa: Rhee et al.)', () => {
		expect(hertzContact(100, 1, modulus).notes.map(({ code }) => code)).toEqual(['beyond-elastic']);
		expect(hertzContact(5, 2, modulus).notes).toEqual([]);
	});
});

describe('contact area of a rounded cone', () => {
	// plain geometry, at a depth of 1 mm
	it.each([
		[0, 20, 0.098],
		[0, 40, 0.416],
		// pi (0.5 cos 10 + (1 - 0.5 (1 - sin 10)) tan 10)^2 = 1.1155; the notes that this follows print 1.116
		[0.5, 20, 1.1155],
		[0.5, 60, 2.356],
		[2, 40, 9.425],
	])('tip radius %d mm, included angle %d degrees: %d mm2', (radius, included, area) => {
		expect(contactArea_mm2(roundIndenter(radius, included), 1)).toBeCloseTo(area, 3);
	});

	// included angle = 2 atan(1 / 2 CHR)
	it.each([
		[1, 53.13],
		[2, 28.07],
		[3, 18.92],
		[4, 14.25],
	])('a straight cone of CHR %d has %d degrees', (slenderness, angle) => {
		expect(includedAngle_deg(slenderness)).toBeCloseTo(angle, 2);
	});

	it('never shrinks with depth, and is smooth where the sphere passes into the cone', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0, max: 5, noNaN: true }),
				fc.double({ min: 4, max: 120, noNaN: true }),
				(radius, included) => {
					const tooth = roundIndenter(radius, included);
					const cap = radius * (1 - Math.sin((included * Math.PI) / 360));
					expect(contactArea_mm2(tooth, cap + 1e-9)).toBeCloseTo(contactArea_mm2(tooth, cap), 5);
					let last = 0;
					for (let depth = 0.1; depth < 6; depth += 0.1) {
						const area = contactArea_mm2(tooth, depth);
						expect(area).toBeGreaterThanOrEqual(last);
						last = area;
					}
				},
			),
			{ numRuns: 60 },
		);
	});
});

const skin: FoodMaterial = {
	id: 'skin',
	resists_MPa: 20,
	basis: 'strength',
	gives: 'parts',
	edges: 'help',
	recalled: true,
	standIn: false,
};
const force = (tooth: ReturnType<typeof roundIndenter>, material = skin, depth = 4) =>
	punctureForce_N(tooth, [{ material, thickness_mm: 50 }], depth, 0.7);

describe('published orderings', () => {
	// Freeman & Lemen 2006, J. Zool. 269: 51-56: edged (triangular) indenters need less force than round ones in leather,
	// turkey skin and the like; no difference in leaves, apple, tomato
	it('edges help in skin, and make no difference where none was found', () => {
		const [round, edged] = [roundIndenter(0.3, 30), roundIndenter(0.3, 30, 1)];
		expect(force(edged)).toBeLessThan(force(round));
		const leaf: FoodMaterial = { ...skin, id: 'leaf', edges: 'no-difference' };
		expect(force(edged, leaf)).toBe(force(round, leaf));
		const untested: FoodMaterial = { ...skin, id: 'bone', edges: 'not-tested' };
		expect(force(edged, untested)).toBe(force(round, untested));
	});

	// Crofts, Lai, Hu & Anderson 2019, doi:10.1098/rsbl.2018.0905 (28 fangs and metal punches in gel): the included angle predicts
	// the force best; the tip's radius matters only among narrow angles
	it('the included angle predicts the force better than the tip radius', () => {
		const tips = [];
		for (const angle of [10, 15, 20, 25, 30, 40, 50, 60])
			for (const radius of [0.02, 0.05, 0.1, 0.15, 0.2]) tips.push({ angle, radius });
		const forces = tips.map(({ angle, radius }) => Math.log(force(roundIndenter(radius, angle))));
		const byAngle = correlation(
			tips.map(({ angle }) => angle),
			forces,
		);
		const byRadius = correlation(
			tips.map(({ radius }) => radius),
			forces,
		);
		expect(byAngle).toBeGreaterThan(0.9);
		expect(byAngle).toBeGreaterThan(2 * byRadius);
	});

	it('the tip radius matters among narrow angles only', () => {
		const gain = (angle: number) => force(roundIndenter(0.3, angle)) / force(roundIndenter(0.03, angle));
		expect(gain(10)).toBeGreaterThan(2.5);
		expect(gain(60)).toBeLessThan(1.2);
	});

	// Crofts & Summers 2014, doi:10.1098/rsif.2013.1053: domed and flat beat cupped teeth, tall or thin cusps break shells
	// best, thickness matters
	it('tall cusps break shells best, domed and flat beat cupped, thick shells need more', () => {
		const shell = { thickness_mm: 1.5, radius_mm: 25, strength_MPa: 60, nu: 0.3 };
		const crack = (radius_mm: number, halfWidth_mm = 8, thickness_mm = 1.5) =>
			shellCrackForce({ radius_mm, halfWidth_mm }, { ...shell, thickness_mm }, 37).force_N;
		const [cusp, dome, flat, cup] = [crack(0.5), crack(8), crack(Infinity), crack(-12)];
		expect(cusp).toBeLessThan(dome);
		expect(dome).toBeLessThan(flat);
		expect(flat).toBeLessThan(cup);
		expect(crack(8, 8, 3)).toBeGreaterThan(3 * dome);
	});

	// Crofts 2015, J. Exp. Biol. 218: 2705: convex or tall-cusped teeth suffer more
	it('but a tall cusp is more strained than a dome', () => {
		const peak = (tip: number) =>
			bendingStress(coneBeam(tip, 16, 16), { ...square, force_N: 60, angle_deg: 20 }).peak.tension_MPa;
		expect(peak(1)).toBeGreaterThan(5 * peak(12));
	});

	// MacKenzie, Brock & McCurry 2024, doi:10.1017/pab.2024.10: ridged and smooth crowns carry nearly the same stress; McCurry et
	// al. 2019, Biol. J. Linn. Soc. 127: 245-259: strengthening minor
	it('ridges hardly change the stress', () => {
		expect(ridgeStress(0, 0)).toBeCloseTo(1, 6);
		for (const ridges of [8, 16, 24, 36])
			for (const height of [0.01, 0.03, 0.05]) {
				expect(ridgeStress(ridges, height)).toBeGreaterThan(0.97);
				expect(ridgeStress(ridges, height)).toBeLessThan(1.01);
			}
	});

	// Peterson et al. 2021, PeerJ 9: e11450: a replica of a young Tyrannosaurus's tooth into cow bone, 17 trials, up to 5,641 N
	it('a stout crown a millimetre into bone needs newtons of the order measured', () => {
		const bone: FoodMaterial = {
			...skin,
			id: 'bone',
			resists_MPa: 1000,
			basis: 'hardness',
			edges: 'not-tested',
		};
		const stout = roundIndenter(1.3, 26);
		const needed = punctureForce_N(stout, [{ material: bone, thickness_mm: 5 }], 1, 0.7);
		expect(needed).toBeGreaterThan(5641 / 3);
		expect(needed).toBeLessThan(5641 * 3);
	});

	// Schofield et al. 2016, Interface Focus 6: 20160002: through thick targets, force goes with the square of the diameter
	it('the same tooth twice as large needs four times the force, twice as deep', () => {
		expect(force(roundIndenter(0.6, 30), skin, 8) / force(roundIndenter(0.3, 30), skin, 4)).toBeCloseTo(4, 9);
	});
});

describe('chipping', () => {
	// Chai & Lawn 2007 (recalled): F = 9.3 T h^1.5; T 0.8 MPa m^0.5, h 1 mm: 235 N, h 4 mm: 1,882 N
	it('235 N a millimetre from the edge, eight times that at four', () => {
		expect(chipForce(0.8, 1).force_N).toBeCloseTo(235, 0);
		expect(chipForce(0.8, 4).force_N).toBeCloseTo(1882, 0);
		expect(chipForce(0.8, 1).notes).toEqual([{ code: 'recalled' }]);
	});
});

describe('units of older works', () => {
	// Gignac & Erickson 2017, Sci. Rep. 7 (PMC5435714): 3,690 lbf = 16,414 N; 718 - 2,974 MPa = 104,137 - 431,342 psi. Leidy 1865
	// counts in lines: 32 lines = 67.73 mm
	it('pounds, pounds per square inch, lines', () => {
		expect(poundsToNewtons(3690)).toBeCloseTo(16414, -0.5);
		expect(psiToMegapascals(104_137)).toBeCloseTo(718, 0);
		expect(psiToMegapascals(431_342)).toBeCloseTo(2974, 0);
		expect(linesToMillimetres(32)).toBeCloseTo(67.73, 2);
	});
});

function correlation(xs: number[], ys: number[]): number {
	const mean = (list: number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
	const [mx, my] = [mean(xs), mean(ys)];
	const sum = (read: (i: number) => number) => xs.reduce((total, _, i) => total + read(i), 0);
	return (
		sum((i) => (xs[i] - mx) * (ys[i] - my)) /
		Math.sqrt(sum((i) => (xs[i] - mx) ** 2) * sum((i) => (ys[i] - my) ** 2))
	);
}
