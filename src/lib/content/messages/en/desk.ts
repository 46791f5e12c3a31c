import { say, type Wording } from '../parts';

/** What a broken file says of itself, with its line; null when it says nothing. */
export type Broken = { line: number; said: Wording } | null;

/** Why something asked for at the desk was not done. */
export const DESK = {
	'desk-not-understood': () =>
		say(
			'The page sent something that is not a set of marks; nothing was written.',
			'Load the page again, and set the marks once more.',
		),
	'desk-no-such-specimen': (d: { id: string }) =>
		say(
			`There is no specimen "${d.id}" in the content folder.`,
			'Check the address, or go back to the desk and choose from the list.',
		),
	'desk-unreadable': () =>
		say(
			'specimen.yaml could not be read: it is too long, not saved as UTF-8, or locked.',
			'Close it in other programs, and look at what the desk lists for this specimen.',
		),
	'desk-specimen-has-errors': (d: Broken) =>
		d
			? say(`specimen.yaml, line ${d.line}: ${d.said.message}`, d.said.remedy)
			: say(
					'specimen.yaml cannot be read as it is.',
					'Put right what the desk lists for this specimen first.',
				),
	'desk-marks-not-possible': (d: Broken) =>
		d ? say(d.said.message, d.said.remedy) : say('These marks are not possible.', 'Set them once more.'),
	'desk-not-a-scan': () =>
		say(
			'This tooth is a model in numbers, and a model marks its own crown.',
			'Change the numbers under model: in specimen.yaml.',
		),
	'desk-not-editable': () =>
		say(
			'The file is written in a way that cannot be changed from here without risk.',
			'Write the marks into specimen.yaml by hand, or bring its lines into the form that other specimens have.',
		),
	'desk-changed-meanwhile': () =>
		say(
			'specimen.yaml has been changed since this page was opened; nothing was written.',
			'Load the page again, and set the marks once more.',
		),
	'desk-not-written': (d: { reason: string | null }) =>
		say(
			`specimen.yaml could not be written (${d.reason ?? 'unknown reason'}).`,
			'Check that this computer may write into the content folder and that its disk is not full.',
		),
} as const;
