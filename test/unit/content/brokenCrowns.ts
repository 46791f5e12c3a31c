import { S1, S2, type BrokenCase } from './brokenContent';
import { edited, type Overlay } from './validContent';

/** The scan of the second specimen with marks on its crown. */
const crown = (
	apex: string,
	rest = 'base_mesial_mm: [-9.5, 0, 18], base_distal_mm: [9, 0.4, 18.2]',
): Overlay =>
	edited(
		S2,
		'  scan: { file: scan.stl, units: mm }\n',
		`  scan:\n    file: scan.stl\n    units: mm\n    crown: { apex_mm: ${apex}, ${rest} }\n`,
	);

/** Marks of a crown, sizes on a card and kinds of feature. */
export const brokenCrowns: BrokenCase[] = [
	{
		name: 'a colour of a scan that is not known',
		overlay: edited(S2, 'units: mm }', 'units: mm, colour: black }'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:8:46`,
				id: 'wrong-choice',
				severity: 'error',
				path: 'shape.scan.colour',
				message: '"black" is not possible for colour: it is scan or plain.',
				remedy: 'Write colour: plain',
			},
		],
	},
	{
		name: 'a mark of two numbers',
		overlay: crown('[2.1, 60]'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:11:23`,
				id: 'not-a-point',
				severity: 'error',
				path: 'shape.scan.crown.apex_mm',
				message: 'apex_mm is three numbers in brackets, but [2.1, 60] was found.',
				remedy: 'Write apex_mm: [2.1, 4.8, 60.3], with decimal points',
			},
		],
	},
	{
		name: 'a mark with decimal commas',
		overlay: crown('[2,1, 4,8, 60,3]'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:11:23`,
				id: 'not-a-point',
				severity: 'error',
				path: 'shape.scan.crown.apex_mm',
				message: 'apex_mm is three numbers in brackets, but [2, 1, 4, 8, 60, 3] was found.',
				remedy: 'Write apex_mm: [2.1, 4.8, 60.3], with decimal points',
			},
		],
	},
	{
		name: 'a mark in words',
		overlay: crown('at the tip'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:11:23`,
				id: 'not-a-point',
				severity: 'error',
				path: 'shape.scan.crown.apex_mm',
				message: 'apex_mm is three numbers in brackets, but at the tip was found.',
				remedy: 'Write apex_mm: [2.1, 4.8, 60.3], with decimal points',
			},
		],
	},
	{
		name: 'a crown with a mark missing',
		overlay: crown('[2.1, 4.8, 60.3]', 'base_mesial_mm: [-9.5, 0, 18]'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:11:5`,
				id: 'missing-key',
				severity: 'error',
				path: 'shape.scan.crown.base_distal_mm',
				message: 'base_distal_mm is missing.',
				remedy: 'Add a line such as base_distal_mm: [9.1, 0.4, 18.2]',
			},
		],
	},
	{
		name: 'a mark without its unit',
		overlay: crown('[2.1, 4.8, 60.3]', 'base_mesial: [-9.5, 0, 18], base_distal_mm: [9, 0.4, 18.2]'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:11:41`,
				id: 'unit-missing',
				severity: 'error',
				path: 'shape.scan.crown.base_mesial',
				message: '"base_mesial" does not say its unit: lengths are in millimetres: base_mesial_mm',
				remedy: 'Write base_mesial_mm: [-9.5, 0.2, 18]',
			},
		],
	},
	{
		name: 'two marks at one place',
		overlay: crown('[9, 0.4, 18.1]'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:11:86`,
				id: 'marks-coincide',
				severity: 'error',
				path: 'shape.scan.crown.base_distal_mm',
				message: 'The apex and the distal base of the crown are marked at the same place.',
				remedy:
					'Mark each at its own place: the apex is the tip, the base points are the front and the back of the crown’s base.',
			},
		],
	},
	{
		name: 'a labial direction that points nowhere',
		overlay: crown(
			'[2.1, 4.8, 60.3]',
			'base_mesial_mm: [-9.5, 0, 18], base_distal_mm: [9, 0.4, 18.2], labial: [0, 0, 0]',
		),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:11:112`,
				id: 'no-direction',
				severity: 'error',
				path: 'shape.scan.crown.labial',
				message: 'labial is a direction, and three zeros point nowhere.',
				remedy:
					'Write which way the lip side looks in the scan, for example labial: [0, 1, 0], or delete the line.',
			},
		],
	},
	{
		name: 'a kind of feature that there is not',
		overlay: edited(S1, 'where: mesial }\nlicence', 'where: mesial, kind: serration }\nlicence'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:26:47`,
				id: 'wrong-choice',
				severity: 'error',
				path: 'features[0].kind',
				message:
					'"serration" is not possible for kind: it is carina, ridge, facet, pit, tip, neck, root or other.',
				remedy: 'Write kind: carina',
			},
		],
	},
	{
		name: 'a size on the card in centimetres',
		overlay: edited(S2, 'licence:', 'declared: { crown_height_cm: 4.2 }\nlicence:'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:9:13`,
				id: 'wrong-unit',
				severity: 'error',
				path: 'declared.crown_height_cm',
				message: '"crown_height_cm" is in another unit: lengths are in millimetres: crown_height_mm',
				remedy: 'Write crown_height_mm: 42',
			},
		],
	},
];
