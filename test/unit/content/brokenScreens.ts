import type { BrokenCase } from './brokenContent';

const ALL = ['skm-0001', 'skm-0002'];
const screens = (lines: string) => ({ 'screens.yaml': lines });

/** screens.yaml; the specimens are shown whatever is wrong with it. */
export const brokenScreens: BrokenCase[] = [
	{
		name: 'a screen with a name that visitors have',
		overlay: screens('own:\n  title: Wall\n'),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:1:1',
				id: 'screen-name-own',
				severity: 'error',
				path: 'own',
				message:
					'"own" is what a visitor\'s own device is called, so no screen of the gallery can have that name.',
				remedy: 'Give the screen another name, for example gallery-wall:',
			},
		],
	},
	{
		name: 'a room of a screen that the exhibit does not show',
		overlay: screens('wall:\n  title: Wall\n  rooms: [quiz, compare]\n'),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:3:11',
				id: 'screen-room-not-shown',
				severity: 'warning',
				path: 'wall.rooms[0]',
				message: 'exhibit.yaml does not show the room quiz, so this screen does not show it either.',
				remedy: 'Add it under rooms in exhibit.yaml, or keep to compare here.',
			},
		],
	},
	{
		name: 'a screen without any room of the exhibit',
		overlay: screens('wall:\n  title: Wall\n  rooms: [quiz]\n'),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:3:10',
				id: 'screen-without-rooms',
				severity: 'warning',
				path: 'wall.rooms',
				message: 'None of these rooms is shown in exhibit.yaml, so this screen shows all that are.',
				remedy: 'Write some of them, for example rooms: [compare]',
			},
		],
	},
	{
		name: 'a screen that starts in a language of another exhibit',
		overlay: screens('wall: { title: Wall, first_language: de }\n'),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:1:38',
				id: 'screen-language-unknown',
				severity: 'error',
				path: 'wall.first_language',
				message: '"de" is not a language of this exhibit, so the screen starts in en.',
				remedy: 'Write one of en, fr, for example first_language: fr',
			},
		],
	},
	{
		name: 'two screens with one title',
		overlay: screens('wall: { title: Wall }\ntable: { title: Wall }\n'),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:2:17',
				id: 'screen-title-twice',
				severity: 'warning',
				path: 'table.title',
				message: 'Two screens are called "Wall": this one and wall. Staff could not tell them apart.',
				remedy: 'Say in the title where each of them stands, for example title: Gallery wall, left',
			},
		],
	},
	{
		name: 'two screens of one name',
		overlay: screens('wall: { title: Wall }\nwall: { title: Table }\n'),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:2:1',
				id: 'duplicate-key',
				severity: 'error',
				path: 'wall',
				message: '"wall" stands here a second time; it is already on line 1.',
				remedy: 'Keep one of the two and delete the other.',
			},
		],
	},
	{
		name: 'times that are none, a day twice, and dimming outside the hours',
		overlay: screens(
			[
				'wall:',
				'  title: Wall',
				'  reload_at: 4 am',
				'  hours:',
				'    - { days: [sat, sun], from: 10.30, until: 25:00 }',
				'    - { days: [sun], from: 10:00, dim_from: 9:00, until: 17:00 }',
				'',
			].join('\n'),
		),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:3:14',
				id: 'bad-time',
				severity: 'error',
				path: 'wall.reload_at',
				message: '"4 am" is not a time of day: that is hours and minutes, from 0:00 to 24:00.',
				remedy: 'Write reload_at: 4:00',
			},
			{
				at: 'screens.yaml:5:33',
				id: 'bad-time',
				severity: 'error',
				path: 'wall.hours[0].from',
				message: '"10.30" is not a time of day: that is hours and minutes, from 0:00 to 24:00.',
				remedy: 'Write from: 10:30',
			},
			{
				at: 'screens.yaml:5:47',
				id: 'bad-time',
				severity: 'error',
				path: 'wall.hours[0].until',
				message: '"25:00" is not a time of day: that is hours and minutes, from 0:00 to 24:00.',
				remedy: 'Write until: 18:00',
			},
			{
				at: 'screens.yaml:6:16',
				id: 'screen-day-twice',
				severity: 'warning',
				path: 'wall.hours[1].days[0]',
				message: 'sun stands in the hours of this screen more than once; the first holds.',
				remedy: 'Name each day of the week once.',
			},
			{
				at: 'screens.yaml:6:45',
				id: 'screen-dim-outside',
				severity: 'error',
				path: 'wall.hours[1].dim_from',
				message: 'The screen should grow darker at 9:00, but it is lit from 10:00 to 17:00.',
				remedy: 'Write a time between the two, or leave dim_from out.',
			},
		],
	},
	{
		name: 'a setting that no screen has',
		overlay: screens('wall: { title: Wall, volume: 60, printer: yes }\n'),
		shows: ALL,
		problems: [
			{
				at: 'screens.yaml:1:22',
				id: 'unknown-key',
				severity: 'error',
				path: 'wall.volume',
				message: '"volume" is not known here. Did you mean volume_percent?',
				remedy: 'Write volume_percent: 60',
			},
			{
				at: 'screens.yaml:1:43',
				id: 'not-yes-no',
				severity: 'error',
				path: 'wall.printer',
				message: 'true or false is expected here, but "yes" was found.',
				remedy: 'Write printer: true',
			},
		],
	},
];
