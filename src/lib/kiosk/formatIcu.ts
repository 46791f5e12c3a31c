import IntlMessageFormat from 'intl-messageformat';
import { isolateOwn } from './isolate';
import type { Formatter, Values } from './text.svelte';

interface Made {
	format: IntlMessageFormat;
	/** names of values that are put in as they are, and choose nothing */
	plain: ReadonlySet<string>;
}
type Ast = ReturnType<IntlMessageFormat['getAst']>;

const made = new Map<string, Made>();

/** Fills an ICU message (plurals, choices, numbers). */
export const formatIcu: Formatter = (lang, message, values, isolate = false) => {
	const key = `${lang}\0${message}`;
	let known = made.get(key);
	if (!known) {
		if (made.size > 2000) made.clear(); // edits over a long day must not pile up
		const format = new IntlMessageFormat(message, lang);
		known = { format, plain: plainNames(format.getAst()) };
		made.set(key, known);
	}
	return String(known.format.format(isolate ? isolated(values, known.plain) : values));
};

const isolated = (values: Values, plain: ReadonlySet<string>): Values =>
	Object.fromEntries(
		Object.entries(values).map(([name, value]) => [
			name,
			typeof value === 'string' && plain.has(name) ? isolateOwn(value) : value,
		]),
	);

/** Kinds of element, as the parser numbers them. */
const ARGUMENT = 1;
const SELECT = 5;

function plainNames(ast: Ast): Set<string> {
	const put = new Set<string>();
	const chosen = new Set<string>();
	const walk = (elements: Ast): void => {
		for (const element of elements) {
			if (element.type === ARGUMENT) put.add(element.value);
			if (element.type === SELECT) chosen.add(element.value);
			if ('options' in element) for (const { value } of Object.values(element.options)) walk(value);
		}
	};
	walk(ast);
	return new Set([...put].filter((name) => !chosen.has(name)));
}
