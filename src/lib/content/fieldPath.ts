export type FieldPath = readonly (string | number)[];

/** `['sections', 1, 'at']` -> `sections[1].at` */
export function fieldPath(path: readonly PropertyKey[]): string {
	let text = '';
	for (const step of path) text += typeof step === 'number' ? `[${step}]` : (text && '.') + String(step);
	return text;
}

/** `sections[1].at` -> `['sections', 1, 'at']` */
export function splitFieldPath(text: string): (string | number)[] {
	return [...text.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map((m) => (m[2] === undefined ? m[1] : Number(m[2])));
}

/** The value at a path, or undefined. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
	let at: unknown = value;
	for (const step of path) {
		if (typeof at !== 'object' || at === null) return undefined;
		at = (at as Record<PropertyKey, unknown>)[step];
	}
	return at;
}
