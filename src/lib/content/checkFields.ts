import type { z } from 'zod';
import { explainIssue } from './explainIssue';
import { valueAt } from './fieldPath';
import type { Finding } from './finding';
import type { Places } from './readYaml';

export interface CheckedFields<T> {
	/** absent when the values cannot be used; present also when only unknown keys stand in the way */
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
	const findings = result.error.issues.flatMap((issue) => explainIssue(issue, schema, value, places, prefix));

	// without the keys and entries that nothing else rests on, the rest may still be checked and shown
	const copy = structuredClone(plain(value));
	const lists = new Set<unknown[]>();
	for (const issue of result.error.issues) {
		if (issue.code === 'unrecognized_keys') {
			const parent = valueAt(copy, issue.path) as Record<string, unknown>;
			for (const key of issue.keys) delete parent[key];
			continue;
		}
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

/** The same values with ordinary objects, which can be cloned. */
function plain(value: unknown): unknown {
	if (Array.isArray(value)) return value.map(plain);
	if (typeof value !== 'object' || value === null) return value;
	return Object.fromEntries(Object.entries(value).map(([key, v]) => [key, plain(v)]));
}
