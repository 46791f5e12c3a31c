import type { Doubt, Mark, Unit } from '../codes';
import { exampleFor } from '../examples';
import { number, say } from '../parts';
import { MARKS, UNIT_NAMES } from './voice';

/** Scans that were measured. */
export const MEASURED = {
	'scan-unit': (d: { key: string; says: number; is: number; units: Unit; meant: Unit }) =>
		say(
			`The card says ${d.key}: ${number(d.says)}, but read in ${UNIT_NAMES[d.units]} the scan measures ${number(d.is)} mm: the file's numbers look like ${UNIT_NAMES[d.meant]}.`,
			`Write units: ${d.meant}`,
		),
	'unlike-the-card': (d: { key: string; says: number; is: number }) =>
		say(
			`The card says ${d.key}: ${number(d.says)}, but the shape measures ${number(d.is)} mm.`,
			'Measure the tooth again, and check that the number, the scan and its marks belong to the same tooth.',
		),
	'unlikely-size': (d: { height_mm: number; units: Unit }) =>
		say(
			`Read in ${UNIT_NAMES[d.units]}, this crown is ${number(d.height_mm)} mm high, which is unlikely for a tooth.`,
			'Ask whoever made the scan for the unit of its numbers: units: mm, cm, m, um or in.',
		),
	'crown-base-not-marked': () =>
		say(
			'Nothing tells where the crown ends and the root begins, so the whole piece was measured as a crown.',
			`Mark the tip and the base at the desk, or write under scan: ${exampleFor('crown')}`,
		),
	/** `why` is the measuring's own sentence, `doubt` the same as data */
	'not-one-tooth': (d: { why: string; doubt?: Doubt }) =>
		say(
			d.why,
			'Cut one tooth out of it in the program that made the scan, or mark its crown: the marks are believed.',
		),
	'several-pieces': () =>
		say(
			'The scan has several separate pieces; all were measured together.',
			'Delete what is not the tooth (stand, clay, loose bits) in the program that made the scan.',
		),
	'colour-unreadable': (d: { why: string }) =>
		say(
			`${d.why} The tooth is shown in the colour of its preservation.`,
			'Save the scan again as GLB with its picture inside, as JPEG or PNG of at most 8192 x 8192 pixels; or write under scan: colour: plain',
		),
	'coarse-mesh': () =>
		say(
			'The scan has so few triangles that its measures are rough.',
			'Save it again with more: 40,000 triangles show a whole tooth well.',
		),
	'mark-off-surface': (d: { mark: Mark; gap_mm: number }) =>
		say(
			`The ${MARKS[d.mark]} of the crown is marked ${number(d.gap_mm)} mm away from the surface of the scan.`,
			"Mark it again at the desk. By hand: marks are millimetres in the scan's own frame, whatever its units.",
		),
} as const;
