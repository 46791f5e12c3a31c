import type { ChangedBy, WhatWasDone } from '../../content/deskFiles';

interface Words {
	has(key: string): boolean;
	say(key: string, values?: Record<string, string | number>): string;
}

/** What a kept version was, in words; a code that no words stand behind is told by who did it. */
export function sayVersion(what: WhatWasDone, by: ChangedBy, text: Words): string {
	const key = `desk_did_${what.code}`;
	return text.has(key)
		? text.say(key, { id: '', accession: '', file: '', ...what.data })
		: text.say(`desk_by_${by}`);
}
