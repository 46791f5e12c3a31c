import { placeOf } from '../explainIssue';
import { fieldPath, valueAt } from '../fieldPath';
import { finding, type Finding } from '../finding';
import type { Places } from '../readYaml';
import { isDay } from './isShown';

/** What is wrong with a `show:` by itself: days that are none, an end before the beginning. */
export function showFindings(raw: unknown, places: Places, path: readonly (string | number)[]): Finding[] {
	const found: Finding[] = [];
	const days: Record<string, string> = {};
	for (const key of ['from', 'until'] as const) {
		const at = [...path, key];
		const written = valueAt(raw, at);
		if (typeof written !== 'string') continue;
		if (isDay(written.trim())) days[key] = written.trim();
		else found.push(finding('not-a-day', placeOf(places, at), fieldPath(at), { key, found: written }));
	}
	if (days.from && days.until && days.until < days.from) {
		const at = [...path, 'until'];
		const data = { from: days.from, until: days.until };
		found.push(finding('until-before-from', placeOf(places, at), fieldPath(at), data));
	}
	return found;
}
