import { vec3, type Vec3 } from '../domain/vec3';
import { fieldPath } from './fieldPath';
import { finding, type Finding, type Place } from './finding';
import type { Mark } from './messages/codes';
import type { ScanInFile } from './schemas';

/** Where the marks of a crown stand in specimen.yaml. */
export const CROWN_PATH = ['shape', 'scan', 'crown'] as const;
/** Marks nearer together than this share of the crown cannot be told apart. */
const LEAST_APART = 0.01;

/** What is wrong with the marks of a crown by themselves, before the scan has been read. */
export function crownFindings(
	crown: NonNullable<ScanInFile['crown']>,
	placeOf: (path: readonly (string | number)[]) => Place,
): Finding[] {
	const marks: [name: Mark, key: string, place: Vec3][] = [
		['apex', 'apex_mm', crown.apex_mm],
		['baseMesial', 'base_mesial_mm', crown.baseMesial_mm],
		['baseDistal', 'base_distal_mm', crown.baseDistal_mm],
	];
	const apart = (a: Vec3, b: Vec3): number => vec3.distance(a, b);
	const size = Math.max(
		apart(crown.apex_mm, crown.baseMesial_mm),
		apart(crown.apex_mm, crown.baseDistal_mm),
		apart(crown.baseMesial_mm, crown.baseDistal_mm),
	);
	const found: Finding[] = [];
	for (let second = 1; second < marks.length; second++) {
		const [name, key, place] = marks[second];
		const same = marks.slice(0, second).find(([, , other]) => apart(other, place) <= size * LEAST_APART);
		if (!same) continue;
		const path = [...CROWN_PATH, key];
		found.push(finding('marks-coincide', placeOf(path), fieldPath(path), { first: same[0], second: name }));
	}
	if (crown.labial && !(vec3.norm(crown.labial) > 0)) {
		const path = [...CROWN_PATH, 'labial'];
		found.push(finding('no-direction', placeOf(path), fieldPath(path), null));
	}
	return found;
}
