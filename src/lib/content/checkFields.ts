import type { z } from 'zod';
import { explainIssue, placeOf } from './explainIssue';
import { explainKey } from './explainKey';
import { fieldPath, valueAt } from './fieldPath';
import { keysAt } from './schemaAt';
import type { Finding } from './finding';
import type { Places } from './readYaml';

export interface CheckedFields<T> {
	/** absent when the values cannot be used; present also when misspelt or unknown keys alone stand in the way */
	value?: T;
	findings: Finding[];
}

/** Checks plain values against a kind of file; `prefix` is where they stand in their file. */
export function checkFields<T>(
	schema: z.ZodType<T>,
	value: unknown,
	places: Places,
	prefix: readonly PropertyKey[] = [],
	prune: (path: readonly PropertyKey[]) => boolean = () => false,
): CheckedFields<T> {
	const result = schema.safeParse(value);
	if (result.success) return { value: result.data, findings: [] };
	const { issues } = result.error;
	const findings: Finding[] = [];
	const copy = plain(value);
	/** paths of keys that stand in the file under another name */
	const renamed = new Set<string>();
	for (const issue of issues) {
		if (issue.code !== 'unrecognized_keys') continue;
		const parent = valueAt(copy, issue.path) as Record<string, unknown>;
		const known = keysAt(schema, issue.path, value);
		for (const key of issue.keys) {
			const steps = [...prefix, ...issue.path];
			const place = placeOf(places, [...steps, key], 'key');
			const explained = explainKey(schema, steps, key, known, parent[key], place);
			findings.push(explained.found);
			delete parent[key];
			if (explained.meant === undefined || Object.hasOwn(parent, explained.meant)) continue;
			// read on as if it were written right, so that what is wrong elsewhere shows as well
			parent[explained.meant] = explained.value;
			renamed.add(fieldPath([...issue.path, explained.meant]));
		}
	}
	for (const issue of issues) {
		if (issue.code === 'unrecognized_keys' || renamed.has(fieldPath(issue.path))) continue;
		findings.push(...explainIssue(issue, schema, value, places, prefix));
	}

	// without the keys and entries that nothing else rests on, the rest may still be checked and shown
	const lists = new Set<unknown[]>();
	for (const issue of issues) {
		if (issue.code === 'unrecognized_keys') continue;
		for (let steps = issue.path.length; steps > 0; steps--) {
			const path = issue.path.slice(0, steps);
			if (!prune(path)) continue;
			const parent = valueAt(copy, path.slice(0, -1)) as Record<PropertyKey, unknown>;
			if (Array.isArray(parent)) {
				parent[path[steps - 1] as number] = undefined;
				lists.add(parent);
			} else delete parent[path[steps - 1]];
			break;
		}
	}
	for (const list of lists) list.splice(0, list.length, ...list.filter((item) => item !== undefined));
	const again = schema.safeParse(copy);
	return again.success ? { value: again.data, findings } : { findings };
}

/** A copy with ordinary objects. */
function plain(value: unknown): unknown {
	if (Array.isArray(value)) return value.map(plain);
	if (typeof value !== 'object' || value === null) return value;
	return Object.fromEntries(Object.entries(value).map(([key, v]) => [key, plain(v)]));
}
