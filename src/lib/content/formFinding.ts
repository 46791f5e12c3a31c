import type { FormProblem } from '../domain/tooth/form';
import { snakeKey } from './camelKey';
import { fieldPath, splitFieldPath } from './fieldPath';
import { finding, type Finding, type Place } from './finding';

/** Where a form stands in specimen.yaml. */
const MODEL = ['shape', 'model'] as const;

/** Words why a model cannot be made, at the field that the file writes down. */
export function formFinding(
	problem: FormProblem,
	placeOf: (path: readonly (string | number)[]) => Place,
	within: readonly string[] = MODEL,
): Finding {
	const steps = splitFieldPath(problem.path).map((step) =>
		typeof step === 'number' ? step : snakeKey(step),
	);
	const whole = [...within, ...steps];
	const place = placeOf(whole);
	const path = fieldPath(whole);
	const { found, min, max } = problem;
	switch (problem.code) {
		case 'out-of-range':
			return finding('out-of-range', place, path, { path, found: String(found ?? ''), min, max });
		case 'tip-too-blunt':
			return finding('tip-too-blunt', place, path, { found, max });
		case 'no-crown-left':
			return finding('no-crown-left', place, path, null);
		case 'serration-too-fine':
			return finding('serration-too-fine', place, path, { found, max });
		case 'ridge-too-tall':
			return finding('ridge-too-tall', place, path, { path, found, max });
		case 'pulp-breaks-out':
			return finding('pulp-breaks-out', place, path, { found, max });
		case 'sections-empty':
			return finding('sections-empty', place, path, null);
		case 'not-closed':
			return finding('shape-not-closed', place, path, null);
	}
}
