import type { DrawingFault } from '../codes';
import { exampleFor } from '../examples';
import { number, say } from '../parts';

const FAULTS: Readonly<Record<Exclude<DrawingFault, 'part'>, string>> = {
	script: 'a script',
	style: 'a style',
	link: 'a link',
	picture: 'a picture',
	lettering: 'lettering',
	rectangle: 'a rectangle',
	circle: 'a circle',
	ellipse: 'an ellipse',
	line: 'a line',
	polygon: 'a polygon',
	transform: 'a transform',
};

/** The animal behind a tooth: its outline (`groups/<id>.svg`), its length, its short lines. */
export const ANIMALS = {
	'drawing-not-svg': () =>
		say(
			'The drawing is not an SVG file, or a part of it is not closed.',
			'Save the outline again as "plain SVG" in your drawing program.',
		),
	'drawing-forbidden': (d: { what: DrawingFault; name?: string }) =>
		say(
			`The drawing holds ${d.what === 'part' ? `a part of the kind "${d.name ?? ''}"` : FAULTS[d.what]}; only outlines (paths) are used here.`,
			'Turn everything into paths in your drawing program, without effects, and save it as "plain SVG".',
		),
	'drawing-viewbox': () =>
		say(
			'The drawing does not say how large its sheet is: viewBox is missing, or is not four numbers.',
			'Write viewBox="0 0 1000 200": left, top, width, height. The width is the length of the animal, snout to tail tip.',
		),
	'drawing-no-path': () =>
		say(
			'The drawing holds no outline.',
			'Draw the outline as a path, or take the file out of groups/ and no outline is shown.',
		),
	'drawing-bad-path': (d: { path: number; found: string }) =>
		say(
			`The data of path ${d.path} cannot be read at "${d.found.replace(/"/g, "'")}".`,
			'Save the outline again as "plain SVG"; path data is letters and numbers, for example M0 0L10 5Z',
		),
	'drawing-too-detailed': (d: { characters: number; most: number }) =>
		say(
			`The outline has ${d.characters} signs of path data; ${d.most} is the most.`,
			'Simplify the path in your drawing program: 30 to 100 points are plenty for an outline.',
		),
	'length-empty': () =>
		say(
			'length_m gives neither a typical nor a largest length.',
			`Write at least one of them: ${exampleFor('length_m')}`,
		),
	'lengths-swapped': (d: { typical: number; largest: number }) =>
		say(
			`The typical length (${number(d.typical)} m) is greater than the largest (${number(d.largest)} m).`,
			`Swap them: typical: ${number(d.largest)} and largest: ${number(d.typical)}`,
		),
	'long-line': (d: { key: string; words: number; most: number }) =>
		say(
			`${d.key} has ${d.words} words; ${d.most} is the most for a line that is read at a glance.`,
			'Keep the one thing that matters most.',
		),
} as const;
