import { stringify } from 'yaml';

/** A text, number or list of texts as YAML on one line, safe between brackets too. */
export function yamlScalar(value: string | number | readonly string[]): string {
	if (typeof value === 'number') return String(value);
	if (typeof value !== 'string') return `[${value.map(yamlScalar).join(', ')}]`;
	const plain = stringify(value, { lineWidth: 0 }).trimEnd();
	return /[,[\]{}\n]/.test(plain) ? JSON.stringify(value) : plain;
}
