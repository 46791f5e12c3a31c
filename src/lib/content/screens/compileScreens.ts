import { checkEntry } from '../compileTable';
import { placeOf } from '../explainIssue';
import { fieldPath, valueAt } from '../fieldPath';
import { finding, type Finding } from '../finding';
import type { YamlResult } from '../readYaml';
import { clockMinutes } from './clockMinutes';
import { screenEntrySchema } from './schemas';
import { OWN_DEVICE, type ScreenSettings, type Weekday } from './types';

export type CompiledScreens = Map<string, ScreenSettings>;

/** Checks screens.yaml by itself: one bad screen leaves out that screen. */
export function compileScreens(yaml: YamlResult): { compiled: CompiledScreens; findings: Finding[] } {
	const compiled: CompiledScreens = new Map();
	const findings: Finding[] = [];
	const titles = new Map<string, string>();
	for (const [id, value] of Object.entries(yaml.value as Record<string, unknown>)) {
		const checked = checkEntry(screenEntrySchema, id, value, yaml.places);
		const own = [...checked.findings];
		const key = placeOf(yaml.places, [id], 'key');
		if (id === OWN_DEVICE) own.push(finding('screen-name-own', key, id, null));
		own.push(...hoursFindings(id, yaml));
		findings.push(...own);
		const { value: read } = 'value' in checked ? checked : { value: undefined };
		if (!read || own.some(({ severity }) => severity === 'error')) continue;
		const other = titles.get(read.title);
		if (other !== undefined) {
			const path = [id, 'title'];
			const data = { found: read.title, other };
			findings.push(finding('screen-title-twice', placeOf(yaml.places, path), fieldPath(path), data));
		} else titles.set(read.title, id);
		const { hours, reloadAt, staysLitMin, ...rest } = read;
		compiled.set(id, {
			id,
			...rest,
			...(hours && {
				hours: hours.map(({ days, from, dimFrom, until }) => ({
					days,
					from_min: clockMinutes(from),
					...(dimFrom !== undefined && { dimFrom_min: clockMinutes(dimFrom) }),
					until_min: clockMinutes(until),
				})),
			}),
			...(reloadAt !== undefined && { reloadAt_min: clockMinutes(reloadAt) }),
			...(staysLitMin !== undefined && { staysLit_min: staysLitMin }),
		});
	}
	return { compiled, findings };
}

/** What only a look at all hours of a screen tells; times that are none have been told of already. */
function hoursFindings(id: string, { value, places }: YamlResult): Finding[] {
	const hours = valueAt(value, [id, 'hours']);
	if (!Array.isArray(hours)) return [];
	const found: Finding[] = [];
	const seen = new Set<unknown>();
	hours.forEach((_, i) => {
		const days = valueAt(value, [id, 'hours', i, 'days']);
		(Array.isArray(days) ? (days as Weekday[]) : []).forEach((day, j) => {
			const path = [id, 'hours', i, 'days', j];
			if (seen.has(day))
				found.push(finding('screen-day-twice', placeOf(places, path), fieldPath(path), { found: day }));
			seen.add(day);
		});
		const [from, dim, until] = ['from', 'dim_from', 'until'].map((key) =>
			valueAt(value, [id, 'hours', i, key]),
		);
		if (![from, dim, until].every((time) => typeof time === 'string' && /^\d{1,2}:\d\d$/.test(time))) return;
		const start = clockMinutes(from as string);
		// an end before the beginning is one of the next day
		const after = (time: unknown) => (clockMinutes(time as string) - start + 1440) % 1440 || 1440;
		if (after(dim) < after(until)) return;
		const path = [id, 'hours', i, 'dim_from'];
		const data = { found: dim as string, from: from as string, until: until as string };
		found.push(finding('screen-dim-outside', placeOf(places, path), fieldPath(path), data));
	});
	return found;
}
