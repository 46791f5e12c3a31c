import { describe, expect, it } from 'vitest';
import { apexAngle, crownAngle, distalAngle } from '../../src/lib/domain/measure/angles';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import type { CrownMeasures } from '../../src/lib/domain/measure/crownMeasures';
import type { TriMesh } from '../../src/lib/domain/mesh/triMesh';
import { ellipticCone, placed } from '../unit/mesh/shapes';

/**
 * Published crowns, mm and degrees. All rows stand in the crown-measurement spreadsheet of Hendrickx, Trapman, Holwerda,
 * Stein, Wills, Rauhut, Melzer, Van Woensel & Reumer 2024, J. Vert. Paleontol., which re-credits those of Smith 2005
 * (doi:10.1671/0272-4634(2005)025[0865:HITRIF]2.0.CO;2). Definitions: Smith, Vann & Dodson 2005
 * (doi:10.1002/ar.a.20206); Hendrickx, Mateus & Araujo 2015 (doi:10.1080/02724634.2015.982797).
 */
interface PublishedCrown {
	name: string;
	cbl: number;
	cbw: number;
	ch: number;
	al: number;
	cbr: number;
	chr: number;
	/** at the mesial base point, at the apex, at the distal base point */
	angles?: [number, number, number];
	/** crown angle as listed, to the full degree */
	listedCrownAngle?: number;
}

// prettier-ignore
const CROWNS: PublishedCrown[] = [
	// same spreadsheet: Eoraptor PVSJ 512, premaxillary tooth 2
	{ name: 'Eoraptor PVSJ 512 pmx2', cbl: 2.5, cbw: 1.62, ch: 6.74, al: 7.0, cbr: 0.648, chr: 2.696, angles: [73.70, 20.86, 85.44] },
	// Smith 2005 in the same spreadsheet: Tyrannosaurus FMNH PR2081, maxillary tooth 5
	{ name: 'Tyrannosaurus PR2081 mx05', cbl: 45.46, cbw: 32.63, ch: 94.06, al: 108.36, cbr: 0.718, chr: 2.069, angles: [59.76, 24.68, 95.56] },
	// same spreadsheet: Carcharodontosaurus SGM Din-1, maxillary tooth 3
	{ name: 'Carcharodontosaurus SGM Din-1 mx03', cbl: 41.46, cbw: 15.15, ch: 71.01, al: 82.32, cbr: 0.365, chr: 1.713, angles: [59.61, 30.24, 90.15] },
	// same spreadsheet: Torvosaurus ML 1100, maxillary tooth 2
	{ name: 'Torvosaurus ML 1100 mx02', cbl: 45.52, cbw: 16.4, ch: 106.4, al: 118.57, cbr: 0.360, chr: 2.337, angles: [63.54, 22.52, 93.94] },
	// same spreadsheet: Megalosaurus NHMUK R234
	{ name: 'Megalosaurus NHMUK R234', cbl: 24.28, cbw: 13.14, ch: 52.33, al: 54.19, cbr: 0.541, chr: 2.155, angles: [72.58, 26.28, 81.14] },
	// same spreadsheet: Suchomimus UC G67-1
	{ name: 'Suchomimus UC G67-1', cbl: 18.6, cbw: 14.9, ch: 48.5, al: 53.0, cbr: 0.801, chr: 2.608, angles: [65.97, 20.50, 93.52] },
	// same spreadsheet: Velociraptor AMNH 6515, maxillary tooth 4
	{ name: 'Velociraptor AMNH 6515 mx04', cbl: 4.75, cbw: 1.80, ch: 7.89, al: 9.56, cbr: 0.379, chr: 1.661, angles: [55.30, 29.67, 95.04] },
	// same spreadsheet: Troodon DMNH 22837, premaxillary; leans to mesial (AL < CH) and is as wide as long
	{ name: 'Troodon DMNH 22837 pmx', cbl: 4.5, cbw: 4.5, ch: 9.8, al: 9.4, cbr: 1.00, chr: 2.178, angles: [81.46, 27.01, 71.54] },
	// same spreadsheet, sheet of the Brussels collection (RBINS), with crown angles listed to the degree
	{ name: 'RBINS R 447', cbl: 12, cbw: 8.8, ch: 25.25, al: 25.35, cbr: 0.73, chr: 2.1, listedCrownAngle: 76 },
	{ name: 'RBINS R 450', cbl: 16.15, cbw: 13.85, ch: 49.15, al: 47.7, cbr: 0.86, chr: 3.04, listedCrownAngle: 86 },
	{ name: 'RBINS R 451', cbl: 30.4, cbw: 25.4, ch: 75.25, al: 80.6, cbr: 0.84, chr: 2.48, listedCrownAngle: 69 },
];

/**
 * Smith 2005 in the same spreadsheet: a front tooth that stands turned, wider than long. Its sheet prints CHR 1.765 and
 * the angles 62.10, 30.05 and 87.85, all of them made with the width in place of the length.
 */
const TURNED: PublishedCrown = {
	name: 'Tyrannosaurus PR2081 pm03',
	...{ cbl: 24.0, cbw: 36.06, ch: 63.65, al: 71.97, cbr: 1.5025, chr: 2.652 },
};

/** Oblique elliptic cone with the crown's triangle in the plane of its base length. */
function coneOf({ cbl, cbw, ch, al }: PublishedCrown): TriMesh {
	// from the mesial point at (-cbl/2, 0) and the distal one at (cbl/2, 0): al^2 - ch^2 = 2 cbl x
	const x = (al * al - ch * ch) / (2 * cbl);
	const y = Math.sqrt(al * al - (x + cbl / 2) ** 2);
	return ellipticCone(cbl / 2, cbw / 2, [x, y, 0]);
}

function measured(crown: PublishedCrown, marked: boolean): CrownMeasures {
	const angles = [0.7, -1.1, 2.3] as const;
	const move = [31, -12, 55] as const;
	const mesh = placed(coneOf(crown), angles, 1, move);
	if (!marked) return value(measureCrown(mesh));
	// the apex is the last vertex; the ends of the base are the first of its ring and the one opposite
	const at = (i: number) =>
		[...mesh.positions.slice(i * 3, i * 3 + 3)] as unknown as [number, number, number];
	const marks = { apex: at(mesh.positions.length / 3 - 1), baseMesial: at(120), baseDistal: at(0) };
	return value(measureCrown(mesh, { marks }));
}

function value(result: ReturnType<typeof measureCrown>): CrownMeasures {
	if (!result.ok) throw new Error(result.problem.message);
	return result.value;
}

const near = (found: number, expected: number, share: number): void => {
	expect(Math.abs(found / expected - 1), `${found} for ${expected}`).toBeLessThan(share);
};

describe('angles of published crowns', () => {
	it.each([...CROWNS, TURNED])('$name', ({ cbl, al, ch, angles, listedCrownAngle }) => {
		const found = [crownAngle(cbl, al, ch), apexAngle(cbl, al, ch), distalAngle(cbl, al, ch)];
		expect(found[0] + found[1] + found[2]).toBeCloseTo(180, 9);
		angles?.forEach((expected, i) => expect(Math.abs(found[i] - expected)).toBeLessThan(0.01));
		if (listedCrownAngle) expect(Math.abs(found[0] - listedCrownAngle)).toBeLessThanOrEqual(0.5);
	});
});

describe('published crowns built as oblique cones and measured back', () => {
	// Troodon is as wide as long, and R 450 leans to mesial: without marks no shape tells that
	const plain = CROWNS.filter((crown) => crown.al > crown.ch && crown.cbr < 1);

	it.each(plain)('$name, unmarked', (crown) => check(measured(crown, false), crown));

	it.each([...CROWNS, TURNED])('$name, marked', (crown) => check(measured(crown, true), crown));

	function check(m: CrownMeasures, crown: PublishedCrown): void {
		near(m.crownHeight_mm, crown.ch, 0.005);
		near(m.apicalLength_mm, crown.al, 0.005);
		near(m.crownBaseLength_mm, crown.cbl, 0.005);
		near(m.crownBaseWidth_mm, crown.cbw, 0.005);
		// ratios as printed, to half their last digit and half a percent
		expect(Math.abs(m.crownBaseRatio - crown.cbr)).toBeLessThan(0.005 + crown.cbr * 0.005);
		expect(Math.abs(m.crownHeightRatio - crown.chr)).toBeLessThan(0.005 + crown.chr * 0.005);
		const expected = crown.angles ?? [
			crownAngle(crown.cbl, crown.al, crown.ch),
			apexAngle(crown.cbl, crown.al, crown.ch),
		];
		expect(Math.abs(m.crownAngle_deg - expected[0])).toBeLessThan(0.3);
		expect(Math.abs(m.apexAngle_deg - expected[1])).toBeLessThan(0.3);
	}
});

describe('a stored ratio that does not follow from its own lengths', () => {
	it('is not repeated: pm03 of PR2081 prints CH/CBW (1.765) as CH/CBL', () => {
		expect(TURNED.ch / TURNED.cbw).toBeCloseTo(1.765, 3);
		const m = measured(TURNED, true);
		expect(m.crownHeightRatio).toBeCloseTo(2.652, 2);
		near(m.crownBaseRatio, 1.5025, 0.005);
	});

	it('nor are its angles, which follow from the width', () => {
		const { cbl, cbw, ch, al } = TURNED;
		const printed = [crownAngle(cbw, al, ch), apexAngle(cbw, al, ch), distalAngle(cbw, al, ch)];
		[62.1, 30.05, 87.85].forEach((expected, i) => expect(Math.abs(printed[i] - expected)).toBeLessThan(0.01));
		const m = measured(TURNED, true);
		expect(Math.abs(m.crownAngle_deg - crownAngle(cbl, al, ch))).toBeLessThan(0.1);
		expect(Math.abs(m.crownAngle_deg - 62.1)).toBeGreaterThan(1);
	});

	it('mx05 of PR2081 lists 87.43 degrees as crown angle, which its own triangle is far from', () => {
		expect(Math.abs(crownAngle(45.46, 108.36, 94.06) - 87.43)).toBeGreaterThan(25);
	});
});

describe('a Mosasaurus crown of 1865', () => {
	// Leidy 1865, Cretaceous Reptiles of the United States, p. 63: 1.5 inches long, base 1 inch by 10 lines;
	// a line is 1/12 inch. CBR = 10/12, CHR = 1.5.
	it('gives its ratios in inches, lines and mm alike', () => {
		const inch = 25.4;
		const mesh = ellipticCone(inch / 2, (10 / 12 / 2) * inch, [inch / 2, 1.5 * inch, 0]);
		const m = value(measureCrown(placed(mesh, [1, 2, 3], 1, [0, 0, 0])));
		near(m.crownHeight_mm, 38.1, 0.005);
		near(m.crownBaseLength_mm, 25.4, 0.005);
		near(m.crownBaseWidth_mm, 21.17, 0.005);
		near(m.crownBaseRatio, 0.833, 0.005);
		near(m.crownHeightRatio, 1.5, 0.005);
	});
});
