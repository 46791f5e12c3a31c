import { describe, expect, it } from 'vitest';
import type { DeclaredSize, SpecimenShape } from '../../../src/lib/content/exhibit';
import { measureFindings } from '../../../src/lib/content/measureFindings';

type Units = Extract<SpecimenShape, { kind: 'scan' }>['units'];

const LINES: Readonly<Record<string, number>> = {
	'shape.scan': 7,
	'shape.scan.file': 8,
	'shape.scan.units': 9,
	'shape.scan.crown.base_mesial_mm': 12,
	'declared.crown_height_mm': 20,
	'declared.base_width_mm': 21,
};
const placeOf = (path: readonly (string | number)[]) => ({ line: LINES[path.join('.')] ?? 1, column: 5 });

/** Measures of a crown 40 mm high on a base of 20 x 16 mm. */
const measures = (factor = 1, warnings: { code: string; message: string }[] = []) => ({
	axialHeight_mm: 40 * factor,
	crownHeight_mm: 41.2 * factor,
	crownBaseLength_mm: 20 * factor,
	crownBaseWidth_mm: 16 * factor,
	warnings,
});

const scan = (units: Units = 'mm'): SpecimenShape => ({ kind: 'scan', file: 'scan.stl', units });
const card: DeclaredSize = { crownHeight_mm: 40, baseLength_mm: 20.5, baseWidth_mm: 15.8 };

const find = (shape: SpecimenShape, declared: DeclaredSize | undefined, measured = measures()) =>
	measureFindings({ shape, ...(declared ? { declared } : {}) }, measured, placeOf).map(
		({ data: _, ...rest }) => rest,
	);

describe('measureFindings', () => {
	it('is silent about a scan that is as its card says', () => {
		expect(find(scan(), card)).toEqual([]);
		expect(find(scan(), undefined)).toEqual([]);
		// either height may be on the card: above the base, or along the distal side
		expect(find(scan(), { crownHeight_mm: 47 })).toEqual([]);
	});

	it('says which unit the numbers look like', () => {
		// the inch is exactly 25.4 mm (international yard and pound agreement, 1959)
		expect(find(scan('mm'), card, measures(1 / 25.4))).toEqual([
			{
				id: 'scan-unit',
				severity: 'error',
				line: 9,
				column: 5,
				path: 'shape.scan.units',
				message:
					"The card says crown_height_mm: 40, but read in millimetres the scan measures 1.575 mm: the file's numbers look like inches.",
				remedy: 'Write units: in',
			},
		]);
	});

	it.each<[Units, Units]>([
		['mm', 'um'],
		['mm', 'cm'],
		['mm', 'm'],
		['in', 'mm'],
		['in', 'cm'],
		['cm', 'mm'],
		['m', 'mm'],
		['um', 'mm'],
		['m', 'in'],
	])('tells a file said to be in %s that is in %s', (said, meant) => {
		const mm = { um: 0.001, mm: 1, cm: 10, m: 1000, in: 25.4 };
		for (const slip of [1, 1.03, 0.97]) {
			const [found, ...more] = find(scan(said), card, measures((slip * mm[said]) / mm[meant]));
			expect([found.id, found.remedy, more.length]).toEqual(['scan-unit', `Write units: ${meant}`, 0]);
		}
		// too far off for that unit: something else is the matter
		const ids = find(scan(said), card, measures((1.2 * mm[said]) / mm[meant])).map(({ id }) => id);
		expect(ids).not.toContain('scan-unit');
		expect(ids).toContain('unlike-the-card');
	});

	it('warns where a size is more than 15 % off the card', () => {
		expect(find(scan(), { crownHeight_mm: 40, baseWidth_mm: 13.8 })).toEqual([
			{
				id: 'unlike-the-card',
				severity: 'warning',
				line: 21,
				column: 5,
				path: 'declared.base_width_mm',
				message: 'The card says base_width_mm: 13.8, but the shape measures 16 mm.',
				remedy:
					'Measure the tooth again, and check that the number, the scan and its marks belong to the same tooth.',
			},
		]);
		expect(find(scan(), { baseWidth_mm: 14 })).toEqual([]);
		// the base fits but the height does not: no unit does that
		expect(find(scan(), { ...card, crownHeight_mm: 400 }).map(({ id }) => id)).toEqual(['unlike-the-card']);
	});

	it('asks about a tooth taller than 400 mm or lower than half a millimetre', () => {
		expect(find(scan('cm'), undefined, measures(10.1))).toEqual([
			{
				id: 'unlikely-size',
				severity: 'warning',
				line: 9,
				column: 5,
				path: 'shape.scan.units',
				message: 'Read in centimetres, this crown is 404 mm high, which is unlikely for a tooth.',
				remedy: 'Ask whoever made the scan for the unit of its numbers: units: mm, cm, m, um or in.',
			},
		]);
		expect(find(scan(), undefined, measures(0.012)).map(({ id }) => id)).toEqual(['unlikely-size']);
		expect(find(scan(), undefined, measures(0.013))).toEqual([]);
		expect(find(scan(), undefined, measures(9.9))).toEqual([]);
	});

	it('hands on what the measuring warns of, in plain words, and keeps the rest to itself', () => {
		const warnings = [
			{ code: 'not-one-tooth', message: 'This is hardly one tooth: it has 3 separate pieces of like size.' },
			{ code: 'crown-base-not-marked', message: 'The base of the crown is not marked.' },
			{ code: 'several-pieces', message: 'The mesh has 3 separate pieces.' },
			{
				code: 'colour-unreadable',
				message: 'The picture that colours its surface cannot be used: it is damaged.',
			},
			{ code: 'coarse-mesh', message: 'The mesh has only 100 triangles.' },
			{
				code: 'mark-off-surface',
				message: 'The mark baseMesial lies 3.1 mm from the nearest point of the mesh.',
			},
			{ code: 'open-mesh', message: 'The mesh has 3 openings: the volume is left out.' },
		];
		expect(find(scan(), undefined, measures(1, warnings))).toEqual([
			{
				id: 'not-one-tooth',
				severity: 'warning',
				line: 8,
				column: 5,
				path: 'shape.scan.file',
				message: 'This is hardly one tooth: it has 3 separate pieces of like size.',
				remedy:
					'Cut one tooth out of it in the program that made the scan, or mark its crown: the marks are believed.',
			},
			{
				id: 'crown-base-not-marked',
				severity: 'warning',
				line: 7,
				column: 5,
				path: 'shape.scan',
				message:
					'Nothing tells where the crown ends and the root begins, so the whole piece was measured as a crown.',
				remedy:
					'Mark the tip and the base at the desk, or write under scan: crown: { apex_mm: [2.1, 4.8, 60.3], base_mesial_mm: [-9.5, 0.2, 18], base_distal_mm: [9.1, 0.4, 18.2] }',
			},
			{
				id: 'several-pieces',
				severity: 'warning',
				line: 8,
				column: 5,
				path: 'shape.scan.file',
				message: 'The scan has several separate pieces; all were measured together.',
				remedy: 'Delete what is not the tooth (stand, clay, loose bits) in the program that made the scan.',
			},
			{
				id: 'colour-unreadable',
				severity: 'warning',
				line: 8,
				column: 5,
				path: 'shape.scan.file',
				message:
					'The picture that colours its surface cannot be used: it is damaged. The tooth is shown in the colour of its preservation.',
				remedy:
					'Save the scan again as GLB with its picture inside, as JPEG or PNG of at most 8192 x 8192 pixels; or write under scan: colour: plain',
			},
			{
				id: 'coarse-mesh',
				severity: 'warning',
				line: 8,
				column: 5,
				path: 'shape.scan.file',
				message: 'The scan has so few triangles that its measures are rough.',
				remedy: 'Save it again with more: 40,000 triangles show a whole tooth well.',
			},
			{
				id: 'mark-off-surface',
				severity: 'warning',
				line: 12,
				column: 5,
				path: 'shape.scan.crown.base_mesial_mm',
				message: 'The mesial base of the crown is marked 3.1 mm away from the surface of the scan.',
				remedy:
					"Mark it again at the desk. By hand: marks are millimetres in the scan's own frame, whatever its units.",
			},
		]);
	});

	it('holds a model against its card too, but asks nothing else of it', () => {
		const model = { kind: 'model', form: {}, basedOn: [] } as unknown as SpecimenShape;
		const warnings = [{ code: 'crown-base-not-marked', message: '' }];
		const found = find(model, { crownHeight_mm: 400 }, measures(1, warnings));
		expect(found.map(({ id, line }) => [id, line])).toEqual([['unlike-the-card', 20]]);
	});
});
