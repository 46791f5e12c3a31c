/**
 * JSON with sorted keys, no spaces and no undefined members: equal data give equal text, whatever
 * order its keys were written in. Numbers are written as JSON.stringify writes them; a number that
 * JSON cannot hold (NaN, Infinity) is a programmer's error and throws. `known` may hold the text of
 * parts that are met again and again and never change.
 */
export function canonicalJson(value: unknown, known?: WeakMap<object, string>): string {
	if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value);
	if (typeof value === 'number') {
		if (!Number.isFinite(value)) throw new RangeError(`canonicalJson: ${value} cannot be written as JSON`);
		return JSON.stringify(value);
	}
	if (typeof value === 'object') {
		const text = known?.get(value);
		if (text !== undefined) return text;
	}
	if (Array.isArray(value)) {
		return `[${value.map((item) => (item === undefined ? 'null' : canonicalJson(item, known))).join(',')}]`;
	}
	if (typeof value === 'object') {
		const record = value as Record<string, unknown>;
		const members: string[] = [];
		for (const key of Object.keys(record).sort()) {
			const member = record[key];
			if (member !== undefined) members.push(`${JSON.stringify(key)}:${canonicalJson(member, known)}`);
		}
		return `{${members.join(',')}}`;
	}
	throw new TypeError(`canonicalJson: a ${typeof value} cannot be written as JSON`);
}
