import { readYaml } from '../../content/readYaml';
import type { FactFields, LabelFields } from '../../content/specimenDesk';
import { readLabel, takeApart } from '../table/labelFile';
import { FIELD_PATHS } from './fieldPaths';

/** What specimen.yaml says, as far as it can be read; null where it is no set of lines at all. */
export function readFacts(exact: string): { fields: FactFields; features: string[] } | null {
	const { value } = readYaml(exact.replace(/^\uFEFF/, ''));
	if (!isMap(value)) return null;
	const at = (path: string): unknown =>
		path.split('.').reduce<unknown>((within, step) => (isMap(within) ? within[step] : undefined), value);
	const fields = Object.fromEntries(
		Object.entries(FIELD_PATHS).map(([name, path]) => {
			const found = at(path);
			return [name, name === 'sources' ? listOf(found) : wordOf(found)];
		}),
	) as unknown as FactFields;
	const marked = Array.isArray(value.features) ? value.features : [];
	return { fields, features: marked.flatMap((one) => (isMap(one) ? wordOf(one.id) || [] : [])) };
}

/** What a label says; null where it has no short lines, or they cannot be read. */
export function readLabelFields(exact: string): LabelFields | null {
	const label = readLabel(exact);
	const parts = takeApart(exact);
	if (!label || !parts) return null;
	const top = readYaml(parts.top).value;
	const named = isMap(top) && isMap(top.features) ? top.features : {};
	return {
		...label,
		features: Object.fromEntries(Object.entries(named).map(([id, name]) => [id, wordOf(name)])),
	};
}

export const NO_LABEL: LabelFields = { title: '', short: '', alt: '', text: '', features: {} };

const isMap = (value: unknown): value is Record<string, unknown> =>
	typeof value === 'object' && value !== null && !Array.isArray(value);
const wordOf = (value: unknown): string =>
	typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
const listOf = (value: unknown): string[] => (Array.isArray(value) ? value.map(wordOf).filter(Boolean) : []);
