import type { SpecimenDraft } from '../content/draft';
import { fieldPath } from '../content/fieldPath';
import { FILE_START, type Place } from '../content/finding';
import { formFinding } from '../content/formFinding';
import type { Problem } from '../content/problem';
import { readYaml } from '../content/readYaml';
import { wordProblem } from '../content/wordProblem';
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
	const { id, data } = failureOf(specimen, failure);
	const words = wordProblem({ id, data, message: '', remedy: '' }, 'en');
	return { id, severity: 'error', file, ...placeOf(field), path: fieldPath(field), data, ...words };
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

function failureOf(
	{ shape }: SpecimenDraft,
	failure: Exclude<ShapeFailure, { of: 'form' }>,
): { id: string; data: object } {
	const scan = shape.kind === 'scan' ? shape.file : null;
	if (failure.of === 'changed') return { id: 'scan-not-there', data: { scan } };
	if (failure.of === 'crash') return { id: 'shape-failed', data: { scan, reason: failure.message } };
	if (failure.of === 'measure') {
		const { code, message: found } = failure.problem;
		const marked = shape.kind === 'scan' && shape.crown !== undefined;
		const advice = provisionalOf(failure) ? 'mark' : marked ? 'check-marks' : 'check-file';
		return { id: `shape-${code}`, data: { scan, code, found, advice } };
	}
	const { code, message: found, remedy: advice } = failure.problem;
	return { id: `scan-${code}`, data: { scan, code, found, advice } };
}
