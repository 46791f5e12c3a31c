import IntlMessageFormat from 'intl-messageformat';
import type { Formatter } from './text.svelte';

const made = new Map<string, IntlMessageFormat>();

/** Fills an ICU message (plurals, choices, numbers). */
export const formatIcu: Formatter = (lang, message, values) => {
	const key = `${lang}\0${message}`;
	let format = made.get(key);
	if (!format) {
		if (made.size > 2000) made.clear(); // edits over a long day must not pile up
		format = new IntlMessageFormat(message, lang);
		made.set(key, format);
	}
	return String(format.format(values));
};
