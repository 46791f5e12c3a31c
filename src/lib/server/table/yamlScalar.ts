import { stringify } from 'yaml';

/** A text, number, yes or no, or list of texts as YAML on one line, safe between brackets too. */
export function yamlScalar(value: string | number | boolean | readonly string[]): string {
	if (typeof value === 'number' || typeof value === 'boolean') return String(value);
	if (typeof value !== 'string') return `[${value.map(yamlScalar).join(', ')}]`;
	const plain = stringify(value, { lineWidth: 0 }).trimEnd();
	return /[,[\]{}\n]/.test(plain) ? JSON.stringify(value) : plain;
}

/** A key as YAML: plain where it is a plain word. */
export const yamlKey = (key: string): string =>
	/^[a-z][\w-]*$/i.test(key) ? yamlScalar(key) : JSON.stringify(key);
