import { exampleAt } from '../examples';
import { atMost, lastKey, number, say } from '../parts';

/** Shapes that cannot be made. */
export const SHAPES = {
	'tip-too-blunt': (d: { found?: number; max?: number }) =>
		say(
			`A tip radius of ${d.found === undefined ? 'this size' : number(d.found)} mm does not fit on this crown${d.max === undefined ? '' : `; ${atMost(d.max)} mm is the most`}.`,
			`Make it smaller, for example tip_radius_mm: ${d.max === undefined ? 0.5 : atMost(d.max)}`,
		),
	'no-crown-left': () =>
		say(
			'The wear given here takes the whole crown away.',
			'Check the numbers under wear: a smaller depth_mm, or a greater tip_worn_to_mm (the height that is left).',
		),
	'serration-too-fine': (d: { found?: number; max?: number }) =>
		say(
			`Serrations of ${d.found === undefined ? 'this number' : number(d.found)} per 5 mm are finer than the model can show${d.max === undefined ? '' : `; ${atMost(d.max)} is the most on this tooth`}.`,
			`Write ${d.max === undefined ? 'a smaller number' : `serrations_per_5mm: ${atMost(d.max)}`}, and give the true number in the label.`,
		),
	'ridge-too-tall': (d: { path: string; found?: number; max?: number }) =>
		say(
			`${lastKey(d.path)} is ${d.found === undefined ? 'too great' : number(d.found)}: ridges or edges would run into each other${d.max === undefined ? '' : `; ${atMost(d.max)} is the most here`}.`,
			`Make it smaller, for example ${d.max === undefined ? exampleAt(d.path) : `${lastKey(d.path)}: ${atMost(d.max)}`}`,
		),
	'pulp-breaks-out': (d: { found?: number; max?: number }) =>
		say(
			'The pulp cavity would come through the wall of the tooth.',
			`Make the cavity lower or narrower${d.max === undefined ? ', for example pulp: { height_mm: 6, opening: 0.5 }' : `: ${atMost(d.max)} is the most here`}`,
		),
	'sections-empty': () =>
		say(
			'The list of sections is empty; the crown needs one at least.',
			'Write sections: [{ at: 0, shape: oval }]',
		),
	'shape-not-closed': () =>
		say(
			'The numbers of the model do not give a closed tooth.',
			'Take out carinae, ridges, wear and pulp, then put them back one by one to find the one that does not fit.',
		),
} as const;
