import { say } from '../parts';

/** screens.yaml */
export const SCREENS = {
	'bad-time': (d: { key: string; found: string; meant?: string }) =>
		say(
			`"${d.found}" is not a time of day: that is hours and minutes, from 0:00 to 24:00.`,
			`Write ${d.key}: ${d.meant ?? '18:00'}`,
		),
	'screen-name-own': () =>
		say(
			'"own" is what a visitor\'s own device is called, so no screen of the gallery can have that name.',
			'Give the screen another name, for example gallery-wall:',
		),
	'screen-room-not-shown': (d: { found: string; rooms: readonly string[] }) =>
		say(
			`exhibit.yaml does not show the room ${d.found}, so this screen does not show it either.`,
			`Add it under rooms in exhibit.yaml, or keep to ${d.rooms.join(', ')} here.`,
		),
	'screen-without-rooms': (d: { rooms: readonly string[] }) =>
		say(
			'None of these rooms is shown in exhibit.yaml, so this screen shows all that are.',
			`Write some of them, for example rooms: [${d.rooms[0]}]`,
		),
	'screen-language-unknown': (d: { found: string; codes: readonly string[] }) =>
		say(
			`"${d.found}" is not a language of this exhibit, so the screen starts in ${d.codes[0]}.`,
			`Write one of ${d.codes.join(', ')}, for example first_language: ${d.codes[d.codes.length - 1]}`,
		),
	'screen-title-twice': (d: { found: string; other: string }) =>
		say(
			`Two screens are called "${d.found}": this one and ${d.other}. Staff could not tell them apart.`,
			'Say in the title where each of them stands, for example title: Gallery wall, left',
		),
	'screen-day-twice': (d: { found: string }) =>
		say(
			`${d.found} stands in the hours of this screen more than once; the first holds.`,
			'Name each day of the week once.',
		),
	'screen-dim-outside': (d: { found: string; from: string; until: string }) =>
		say(
			`The screen should grow darker at ${d.found}, but it is lit from ${d.from} to ${d.until}.`,
			`Write a time between the two, or leave dim_from out.`,
		),
} as const;
