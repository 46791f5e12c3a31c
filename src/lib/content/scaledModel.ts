/** The three numbers that a new model is asked for, mm. */
export interface ModelSize {
	crownHeight_mm: number;
	baseLength_mm: number;
	baseWidth_mm: number;
}

/**
 * A model's numbers, in the keys of code or of a file, with every length (`..._mm`) times `factor`; angles, shares and
 * counts stay. Lengths to 0.01 mm.
 */
export function scaledModel<T>(model: T, factor: number): T {
	if (Array.isArray(model)) return model.map((entry: unknown) => scaledModel(entry, factor)) as T;
	if (typeof model !== 'object' || model === null) return model;
	return Object.fromEntries(
		Object.entries(model).map(([key, value]: [string, unknown]) => [
			key,
			typeof value === 'number' && key.endsWith('_mm')
				? Math.round(value * factor * 100) / 100
				: scaledModel(value, factor),
		]),
	) as T;
}
