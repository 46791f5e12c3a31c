import type { MeasureAdvice, MeasureFaultCode, ScanFaultCode } from '../codes';
import { say } from '../parts';

/** What the message is about: a scan by its file's name, or a model. */
const name = (scan: string | null) => (scan === null ? 'The model' : `The scan ${scan}`);

const ADVICE: Readonly<Record<MeasureAdvice, string>> = {
	mark: 'Mark the tip and the base of its crown at the desk. Check that the file holds one tooth, and that its units are right.',
	'check-marks':
		'Check the marks under crown: they are in millimetres, in the frame of the scan. Check its units too.',
	'check-file':
		'Check that the file holds one tooth with its crown, and nothing else, and that its units are right: units: mm',
};

/** Shapes that could not be read, measured or prepared. */
export const UNREADABLE = {
	'scan-not-there': (d: { scan: string | null }) =>
		say(
			`${name(d.scan)} is not there, or is being changed at this moment.`,
			'Wait until the file has been copied; check its name, for example file: scan.stl',
		),
	'shape-failed': (d: { scan: string | null; reason: string }) =>
		say(
			`${name(d.scan)} could not be prepared (${d.reason}).`,
			d.scan === null
				? 'Compare the numbers with those of another specimen, and put back the last ones that worked.'
				: 'Save the scan again from the program that made it; if it has more than 2 million triangles, save it with fewer.',
		),
	/** stands for every id `shape-<code>`; `found` is the measuring's own sentence */
	'shape-unmeasured': (d: {
		scan: string | null;
		code: MeasureFaultCode;
		found: string;
		advice: MeasureAdvice;
	}) => say(`${name(d.scan)} could not be measured: ${d.found}`, ADVICE[d.advice]),
	/** stands for every id `scan-<code>`; `found` and `advice` are the reader's own sentences, with its figures */
	'scan-unreadable': (d: { scan: string | null; code: ScanFaultCode; found: string; advice: string }) =>
		say(`${name(d.scan)} could not be read. ${d.found}`, d.advice),
} as const;
