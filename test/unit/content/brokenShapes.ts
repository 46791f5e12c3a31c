import { S1, S2, type BrokenCase } from './brokenContent';
import { sculptorLimit } from './sculptorLimit';
import { edited } from './validContent';

const FINEST = sculptorLimit({
	carinae: [{ where: 'mesial', prominence_mm: 0.7, from: 0.05, serrationsPer5mm: 60 }],
});
const BLUNTEST = sculptorLimit({ tipRadius_mm: 20 });
const TALLEST = sculptorLimit({ carinae: [{ where: 'mesial', prominence_mm: 9, from: 0.05 }] });
const HIGHEST = sculptorLimit({ pulp: { height_mm: 36, opening: 0.5 } });

/** Shapes that cannot be made. */
export const brokenShapes: BrokenCase[] = [
	{
		name: 'neither model nor scan',
		overlay: edited(S2, 'shape:\n  scan: { file: scan.stl, units: mm }', 'shape: {}'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:7:1`,
				id: 'shape-missing',
				severity: 'error',
				path: 'shape',
				message: 'The shape is neither a model nor a scan; one of them is needed.',
				remedy: 'Add under shape: either model: with its numbers, or scan: { file: scan.stl, units: mm }',
			},
		],
	},
	{
		name: 'both model and scan',
		overlay: edited(S1, 'shape:\n', 'shape:\n  scan: { file: scan.stl, units: mm }\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:7:1`,
				id: 'shape-both',
				severity: 'error',
				path: 'shape',
				message: 'The shape has both a model and a scan; only one can be shown.',
				remedy: 'Delete one of the two, or put a # before each of its lines.',
			},
			{
				at: `${S1}:8:17`,
				id: 'missing-scan',
				severity: 'error',
				path: 'shape.scan.file',
				message: 'The scan scan.stl is not in specimens/skm-0001/.',
				remedy: 'Put the scan into specimens/skm-0001/, or correct its name.',
			},
		],
	},
	{
		name: 'a licence by its short name',
		overlay: edited(S1, 'http://creativecommons.org/licenses/by/4.0/', 'CC BY-NC 4.0'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:27:10`,
				id: 'bad-licence',
				severity: 'error',
				path: 'licence',
				message:
					'"CC BY-NC 4.0" is not the address of a Creative Commons licence or of a RightsStatements.org statement.',
				remedy: 'Write licence: http://creativecommons.org/licenses/by-nc/4.0/',
			},
		],
	},
	{
		name: 'a licence that is not one',
		overlay: edited(S1, 'http://creativecommons.org/licenses/by/4.0/', 'Ask at the desk'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:27:10`,
				id: 'bad-licence',
				severity: 'error',
				path: 'licence',
				message:
					'"Ask at the desk" is not the address of a Creative Commons licence or of a RightsStatements.org statement.',
				remedy:
					'Write the http address to its last slash: licence: http://creativecommons.org/licenses/by/4.0/',
			},
		],
	},
	{
		name: 'no sections',
		overlay: edited(
			S1,
			'sections:\n      - { at: 0, shape: oval }\n      - { at: 0.7, shape: blade, width_factor: 0.9 }',
			'sections: []',
		),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:13:15`,
				id: 'sections-empty',
				severity: 'error',
				path: 'shape.model.sections',
				message: 'The list of sections is empty; the crown needs one at least.',
				remedy: 'Write sections: [{ at: 0, shape: oval }]',
			},
		],
	},
	{
		name: 'serrations too fine',
		overlay: edited(S1, 'from: 0.05 }', 'from: 0.05, serrations_per_5mm: 60 }'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:20:78`,
				id: 'serration-too-fine',
				severity: 'error',
				path: 'shape.model.carinae[0].serrations_per_5mm',
				message: `Serrations of 60 per 5 mm are finer than the model can show; ${FINEST} is the most on this tooth.`,
				remedy: `Write serrations_per_5mm: ${FINEST}, and give the true number in the label.`,
			},
		],
	},
	{
		name: 'a tip too blunt',
		overlay: edited(S1, 'tip_radius_mm: 1.2', 'tip_radius_mm: 20'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:18:20`,
				id: 'tip-too-blunt',
				severity: 'error',
				path: 'shape.model.tip_radius_mm',
				message: `A tip radius of 20 mm does not fit on this crown; ${BLUNTEST} mm is the most.`,
				remedy: `Make it smaller, for example tip_radius_mm: ${BLUNTEST}`,
			},
		],
	},
	{
		name: 'edges that are too tall',
		overlay: edited(S1, 'prominence_mm: 0.7', 'prominence_mm: 9'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:20:41`,
				id: 'ridge-too-tall',
				severity: 'error',
				path: 'shape.model.carinae[0].prominence_mm',
				message: `prominence_mm is 9: ridges or edges would run into each other; ${TALLEST} is the most here.`,
				remedy: `Make it smaller, for example prominence_mm: ${TALLEST}`,
			},
		],
	},
	{
		name: 'a pulp cavity too high',
		overlay: edited(S1, '    wear:\n', '    pulp: { height_mm: 36, opening: 0.5 }\n    wear:\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:22:24`,
				id: 'pulp-breaks-out',
				severity: 'error',
				path: 'shape.model.pulp.height_mm',
				message: 'The pulp cavity would come through the wall of the tooth.',
				remedy: `Make the cavity lower or narrower: ${HIGHEST} is the most here`,
			},
		],
	},
	{
		name: 'wear that leaves no crown',
		overlay: edited(S1, '    wear:\n', '    wear:\n      tip_worn_to_mm: 1\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:23:23`,
				id: 'no-crown-left',
				severity: 'error',
				path: 'shape.model.wear.tip_worn_to_mm',
				message: 'The wear given here takes the whole crown away.',
				remedy:
					'Check the numbers under wear: a smaller depth_mm, or a greater tip_worn_to_mm (the height that is left).',
			},
		],
	},
];
