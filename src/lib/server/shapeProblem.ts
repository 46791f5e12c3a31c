import type { SpecimenDraft } from '../content/draft';
import { fieldPath } from '../content/fieldPath';
import { FILE_START, type Place } from '../content/finding';
import { formFinding } from '../content/formFinding';
import type { Problem } from '../content/problem';
import { readYaml } from '../content/readYaml';
import type { ShapeFailure } from './prepare/shapeJob';
import { provisionalOf } from './shapeKeeper';

/**
 * Words why a specimen's shape could not be made. `yaml` is the text of its specimen.yaml, for the
 * line and column; null where it cannot be read.
 */
export function shapeProblem(specimen: SpecimenDraft, failure: ShapeFailure, yaml: string | null): Problem {
	const placeOf = placesIn(yaml);
	const file = `specimens/${specimen.id}/specimen.yaml`;
	if (failure.of === 'form') return { ...formFinding(failure.problem, placeOf), file };
	const field = specimen.shape.kind === 'scan' ? ['shape', 'scan', 'file'] : ['shape', 'model'];
	const words = failureWords(specimen, failure);
	return { severity: 'error', file, ...placeOf(field), path: fieldPath(field), ...words };
}

/** Finds the place of a field, or of the nearest one round it that the file does write down. */
export function placesIn(yaml: string | null): (path: readonly (string | number)[]) => Place {
	const places = yaml === null ? null : readYaml(yaml.replace(/^\uFEFF/, '')).places;
	return (path) => {
		for (let steps = path; steps.length > 0; steps = steps.slice(0, -1)) {
			const place = places?.get(fieldPath(steps));
			if (place) return place.value;
		}
		return FILE_START;
	};
}

type Words = Pick<Problem, 'id' | 'message' | 'remedy'>;

function failureWords(specimen: SpecimenDraft, failure: Exclude<ShapeFailure, { of: 'form' }>): Words {
	const { shape } = specimen;
	const name = shape.kind === 'scan' ? `The scan ${shape.file}` : 'The model';
	if (failure.of === 'changed') {
		return {
			id: 'scan-not-there',
			message: `${name} is not there, or is being changed at this moment.`,
			remedy: 'Wait until the file has been copied; check its name, for example file: scan.stl',
		};
	}
	if (failure.of === 'crash') {
		return {
			id: 'shape-failed',
			message: `${name} could not be prepared (${failure.message}).`,
			remedy:
				shape.kind === 'scan'
					? 'Save the scan again from the program that made it; if it has more than 2 million triangles, save it with fewer.'
					: 'Compare the numbers with those of another specimen, and put back the last ones that worked.',
		};
	}
	if (failure.of === 'measure') {
		const marked = shape.kind === 'scan' && shape.crown !== undefined;
		return {
			id: `shape-${failure.problem.code}`,
			message: `${name} could not be measured: ${failure.problem.message}`,
			remedy: provisionalOf(failure)
				? 'Mark the tip and the base of its crown at the desk. Check that the file holds one tooth, and that its units are right.'
				: marked
					? 'Check the marks under crown: they are in millimetres, in the frame of the scan. Check its units too.'
					: 'Check that the file holds one tooth with its crown, and nothing else, and that its units are right: units: mm',
		};
	}
	const { code, message, remedy } = failure.problem;
	return { id: `scan-${code}`, message: `${name} could not be read. ${message}`, remedy };
}
