import { S1, type BrokenCase } from './brokenContent';
import { edited } from './validContent';

/** Numbers that are read otherwise than they were meant. */
export const brokenNumbers: BrokenCase[] = [
	{
		name: 'an accession number with leading zeros and no letters',
		overlay: edited(S1, 'accession: SKM 0001', 'accession: 0001'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:1:12`,
				id: 'text-needs-quotes',
				severity: 'error',
				path: 'accession',
				message: 'A text is expected here, but 0001 is taken as a number or as true or false.',
				remedy: 'Put it in quotes: accession: "0001"',
			},
		],
	},
	{
		name: 'serrations counted on another length',
		overlay: edited(S1, 'from: 0.05 }', 'from: 0.05, serrations_per_mm: 2 }'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:20:58`,
				id: 'wrong-unit',
				severity: 'error',
				path: 'shape.model.carinae[0].serrations_per_mm',
				message:
					'"serrations_per_mm" is in another unit: serrations are counted on 5 mm of the edge: serrations_per_5mm',
				remedy: 'Write serrations_per_5mm: 10',
			},
		],
	},
	{
		name: 'degrees beyond a full turn',
		overlay: edited(S1, 'at: 0.6, where: mesial', 'at: 0.6, where: 400'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:26:33`,
				id: 'out-of-range',
				severity: 'error',
				path: 'features[0].where',
				message: 'where is 400; it can be from 0 to 360.',
				remedy: 'Check the number and its unit; the nearest possible is where: 360',
			},
		],
	},
	{
		name: 'a number that is none',
		overlay: edited(S1, 'tip_radius_mm: 1.2', 'tip_radius_mm: .nan'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:18:20`,
				id: 'not-a-number',
				severity: 'error',
				path: 'shape.model.tip_radius_mm',
				message: 'A number is expected here, but ".nan" was found.',
				remedy: 'Write tip_radius_mm: 1.2',
			},
		],
	},
];
