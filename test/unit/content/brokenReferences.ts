import { S1, S2, type BrokenCase } from './brokenContent';
import { edited } from './validContent';

/** Names in one file that are not in another. */
export const brokenReferences: BrokenCase[] = [
	{
		name: 'an unknown group',
		overlay: edited(S1, 'group: mosasaurus', 'group: mosasuarus'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:2:8`,
				id: 'unknown-group',
				severity: 'error',
				path: 'group',
				message:
					'There is no group "mosasuarus": groups/mosasuarus.yaml does not exist. Did you mean mosasaurus?',
				remedy: 'Write group: mosasaurus',
			},
		],
	},
	{
		name: 'an unknown bed',
		overlay: edited(S1, 'bed: upper-marl', 'bed: uper-marl'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:5:6`,
				id: 'unknown-bed',
				severity: 'error',
				path: 'bed',
				message: 'There is no bed "uper-marl": beds/uper-marl.yaml does not exist. Did you mean upper-marl?',
				remedy: 'Write bed: upper-marl',
			},
		],
	},
	{
		name: 'a bed for a living animal',
		overlay: edited('groups/mosasaurus.yaml', 'living: false', 'living: true'),
		shows: [],
		problems: [
			{
				at: `${S1}:5:6`,
				id: 'bed-for-living',
				severity: 'error',
				path: 'bed',
				message: 'Mosasaurus lives today, so its teeth have no bed.',
				remedy: 'Delete the line that begins with bed:',
			},
			{
				at: `${S2}:5:6`,
				id: 'bed-for-living',
				severity: 'error',
				path: 'bed',
				message: 'Mosasaurus lives today, so its teeth have no bed.',
				remedy: 'Delete the line that begins with bed:',
			},
		],
	},
	{
		name: 'no bed for an extinct animal',
		overlay: edited(S1, 'bed: upper-marl\n', ''),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: `${S1}:2:8`,
				id: 'bed-missing',
				severity: 'warning',
				path: 'group',
				message: 'Mosasaurus is extinct, but no bed is given; the screen will not say how old this is.',
				remedy: 'Add a line such as bed: upper-marl',
			},
		],
	},
	{
		name: 'an unknown source',
		overlay: edited(S1, '\nsources: [leidy-1865]', '\nsources: [leidy-1856]'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:29:11`,
				id: 'unknown-source',
				severity: 'error',
				path: 'sources[0]',
				message: 'There is no source "leidy-1856" in sources.yaml. Did you mean leidy-1865?',
				remedy: 'Write leidy-1865',
			},
		],
	},
	{
		name: 'a group that is itself wrong',
		overlay: edited('groups/mosasaurus.yaml', 'habitat: sea', 'habitat: ocean'),
		shows: [],
		problems: [
			{
				at: 'groups/mosasaurus.yaml:3:10',
				id: 'wrong-choice',
				severity: 'error',
				path: 'habitat',
				message: '"ocean" is not possible for habitat: it is sea, river or land.',
				remedy: 'Write habitat: sea',
			},
			{
				at: `${S1}:2:8`,
				id: 'group-left-out',
				severity: 'error',
				path: 'group',
				message:
					'The group "mosasaurus" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for groups/mosasaurus.',
			},
			{
				at: `${S2}:2:8`,
				id: 'group-left-out',
				severity: 'error',
				path: 'group',
				message:
					'The group "mosasaurus" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for groups/mosasaurus.',
			},
		],
	},
	{
		name: 'a bed whose ages are swapped',
		overlay: edited(
			'beds/upper-marl.yaml',
			'oldest_ma: 70\nyoungest_ma: 67',
			'oldest_ma: 67\nyoungest_ma: 70',
		),
		shows: [],
		problems: [
			{
				at: 'beds/upper-marl.yaml:2:14',
				id: 'ages-swapped',
				severity: 'error',
				path: 'youngest_ma',
				message: 'The youngest age (70) is older than the oldest (67); ages are millions of years ago.',
				remedy: 'Swap them: oldest_ma: 70 and youngest_ma: 67',
			},
			{
				at: `${S1}:5:6`,
				id: 'bed-left-out',
				severity: 'error',
				path: 'bed',
				message:
					'The bed "upper-marl" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for beds/upper-marl.',
			},
			{
				at: `${S2}:5:6`,
				id: 'bed-left-out',
				severity: 'error',
				path: 'bed',
				message:
					'The bed "upper-marl" has problems of its own and is left out, so this specimen is left out too.',
				remedy: 'Put right the problems listed for beds/upper-marl.',
			},
		],
	},
	{
		name: 'a source without its tag',
		overlay: edited('sources.yaml', '  tag: seen\n', ''),
		shows: ['skm-0001', 'skm-0002'],
		problems: [
			{
				at: 'groups/mosasaurus.yaml:4:11',
				id: 'source-left-out',
				severity: 'warning',
				path: 'sources[0]',
				message: 'The source "leidy-1865" cannot be shown, because sources.yaml has problems of its own.',
				remedy: 'Put right the problems listed for sources.yaml.',
			},
			{
				at: 'sources.yaml:1:1',
				id: 'missing-key',
				severity: 'error',
				path: 'leidy-1865.tag',
				message: 'tag is missing.',
				remedy: 'Add a line such as tag: seen',
			},
			{
				at: `${S1}:9:16`,
				id: 'source-left-out',
				severity: 'warning',
				path: 'shape.model.based_on[0]',
				message: 'The source "leidy-1865" cannot be shown, because sources.yaml has problems of its own.',
				remedy: 'Put right the problems listed for sources.yaml.',
			},
			{
				at: `${S1}:29:11`,
				id: 'source-left-out',
				severity: 'warning',
				path: 'sources[0]',
				message: 'The source "leidy-1865" cannot be shown, because sources.yaml has problems of its own.',
				remedy: 'Put right the problems listed for sources.yaml.',
			},
		],
	},
	{
		name: 'an accession number used twice',
		overlay: edited(S2, 'SKM 0002', 'SKM 0001'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:1:12`,
				id: 'duplicate-accession',
				severity: 'error',
				path: 'accession',
				message:
					'The accession number SKM 0001 already belongs to specimens/skm-0001/specimen.yaml, so this specimen is left out.',
				remedy: 'Give one of the two its own number, for example accession: SKM 0105',
			},
		],
	},
	{
		name: 'two features with one id',
		overlay: edited(S1, 'features:\n', 'features:\n  - { id: edge, at: 0.2, where: mesial }\n'),
		shows: ['skm-0002'],
		problems: [
			{
				at: `${S1}:27:11`,
				id: 'duplicate-id',
				severity: 'error',
				path: 'features[1].id',
				message: '"edge" stands here a second time; it is already on line 26.',
				remedy: 'Give each its own, for example edge-2, or delete one of them.',
			},
		],
	},
	{
		name: 'a scan that is not there',
		overlay: edited(S2, 'file: scan.stl', 'file: skan.stl'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:8:17`,
				id: 'missing-scan',
				severity: 'error',
				path: 'shape.scan.file',
				message: 'The scan skan.stl is not in specimens/skm-0002/. Did you mean scan.stl?',
				remedy: 'Write file: scan.stl',
			},
		],
	},
	{
		name: 'a kind of scan that cannot be read',
		overlay: edited(S2, 'file: scan.stl', 'file: Tooth 2.fbx'),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:8:17`,
				id: 'scan-ending',
				severity: 'error',
				path: 'shape.scan.file',
				message:
					'"Tooth 2.fbx" is not a kind of scan that can be read: its name ends in .glb, .stl, .ply or .obj.',
				remedy: 'Save the scan as one of these, for example file: tooth-2.stl',
			},
		],
	},
	{
		name: 'a scan outside its folder',
		overlay: edited(S2, 'file: scan.stl', "file: '../skm-0001/scan.stl'"),
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:8:17`,
				id: 'scan-not-in-folder',
				severity: 'error',
				path: 'shape.scan.file',
				message: '"../skm-0001/scan.stl" is not a plain file name; the scan lies beside specimen.yaml.',
				remedy: "Copy the scan into the specimen's folder and write file: scan.stl",
			},
		],
	},
	{
		name: 'a scan without bytes',
		overlay: { 'specimens/skm-0002/scan.stl': '' },
		shows: ['skm-0001'],
		problems: [
			{
				at: `${S2}:8:17`,
				id: 'empty-scan',
				severity: 'error',
				path: 'shape.scan.file',
				message: 'The scan scan.stl has no bytes in it.',
				remedy: 'Copy it again from where it was made.',
			},
		],
	},
];
