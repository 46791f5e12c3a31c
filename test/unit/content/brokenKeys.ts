import { S1, type BrokenCase } from './brokenContent';
import { edited } from './validContent';

/** Names that are not known, or missing. */
export const brokenKeys: BrokenCase[] = [
	{
		name: 'the wrong unit in a key',
		overlay: edited(S1, 'crown_height_mm: 38.1', 'crown_height_cm: 3.81'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:10:5`,
				id: 'wrong-unit',
				severity: 'error',
				path: 'shape.model.crown_height_cm',
				message: '"crown_height_cm" is in another unit: lengths are in millimetres: crown_height_mm',
				remedy: 'Write crown_height_mm: 38.1',
			},
		],
	},
	{
		name: 'no unit in a key',
		overlay: edited(S1, 'tip_radius_mm: 1.2', 'tip_radius: 1.2'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:18:5`,
				id: 'unit-missing',
				severity: 'error',
				path: 'shape.model.tip_radius',
				message: '"tip_radius" does not say its unit: lengths are in millimetres: tip_radius_mm',
				remedy: 'Write tip_radius_mm: 1.2, if that is its unit',
			},
		],
	},
	{
		name: 'a key in camel case',
		overlay: edited(S1, 'rights_holder:', 'rightsHolder:'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:28:1`,
				id: 'key-spelling',
				severity: 'error',
				path: 'rightsHolder',
				message:
					'"rightsHolder" is written rights_holder here: small letters, British spelling, words joined by an underscore.',
				remedy: 'Write rights_holder: Skerrow Museum',
			},
		],
	},
	{
		name: 'a key with a hyphen',
		overlay: edited(S1, 'rights_holder:', 'rights-holder:'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:28:1`,
				id: 'key-spelling',
				severity: 'error',
				path: 'rights-holder',
				message:
					'"rights-holder" is written rights_holder here: small letters, British spelling, words joined by an underscore.',
				remedy: 'Write rights_holder: Skerrow Museum',
			},
		],
	},
	{
		name: 'American spelling of a key',
		overlay: edited(S1, 'licence:', 'license:'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:27:1`,
				id: 'key-spelling',
				severity: 'error',
				path: 'license',
				message:
					'"license" is written licence here: small letters, British spelling, words joined by an underscore.',
				remedy: 'Write licence: http://creativecommons.org/licenses/by/4.0/',
			},
		],
	},
	{
		name: 'a misspelt key',
		overlay: edited(S1, 'preservation: honey', 'preservaton: honey'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:4:1`,
				id: 'unknown-key',
				severity: 'error',
				path: 'preservaton',
				message: '"preservaton" is not known here. Did you mean preservation?',
				remedy: 'Write preservation: honey',
			},
		],
	},
	{
		name: 'a key in the wrong place',
		overlay: edited(S1, 'part: shed-crown\n', 'part: shed-crown\ntip_worn_to_mm: 36.8\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:4:1`,
				id: 'key-in-wrong-place',
				severity: 'error',
				path: 'tip_worn_to_mm',
				message: '"tip_worn_to_mm" does not belong at the left edge, but under shape.model.wear.',
				remedy: 'Move the line below shape.model.wear, with two more spaces in front than that line has.',
			},
		],
	},
	{
		name: 'a missing key',
		overlay: edited(S1, '    taper: bullet\n', ''),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:8:3`,
				id: 'missing-key',
				severity: 'error',
				path: 'shape.model.taper',
				message: 'taper is missing.',
				remedy: 'Add a line such as taper: bullet',
			},
		],
	},
	{
		name: 'a value left out',
		overlay: edited(S1, 'part: shed-crown', 'part:'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:3:6`,
				id: 'empty-value',
				severity: 'error',
				path: 'part',
				message: 'part has no value.',
				remedy: 'Write one, for example part: shed-crown',
			},
		],
	},
	{
		name: 'a misspelt name with more lines below it',
		overlay: edited(S1, '  model:', '  modle:'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:8:3`,
				id: 'unknown-key',
				severity: 'error',
				path: 'shape.modle',
				message: '"modle" is not known here. Did you mean model?',
				remedy: 'Write model:',
			},
		],
	},
];
