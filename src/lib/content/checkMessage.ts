import { IntlMessageFormat } from 'intl-messageformat';

/** Node types of the parsed message: 0 literal, 1 argument, 2 number, 3 date, 4 time, 5 select, 6 plural, 7 `#`, 8 tag. */
interface MessageNode {
	type: number;
	value?: unknown;
	options?: Record<string, { value: MessageNode[] }>;
}

export type CheckedMessage = { ok: true; names: string[] } | { ok: false; why: string };

const WHY: Readonly<Record<string, string>> = {
	EXPECT_ARGUMENT_CLOSING_BRACE: 'a closing } is missing',
	UNCLOSED_QUOTE_IN_ARGUMENT_STYLE: 'an apostrophe opens and is never closed',
	EMPTY_ARGUMENT: 'there is nothing between { and }',
	MALFORMED_ARGUMENT: 'the name between { and } is one word of letters, digits and _',
	EXPECT_ARGUMENT_TYPE: 'number, plural or select is missing after the comma',
	INVALID_ARGUMENT_TYPE: 'only number, plural or select may follow the comma',
	MISSING_OTHER_CLAUSE: 'the choice other {…} is missing',
};

/** Whether a screen text can be filled in, and the sorted names of its {fillers}. */
export function checkMessage(text: string): CheckedMessage {
	try {
		const tree = new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }).getAst() as MessageNode[];
		const names = new Set<string>();
		collect(tree, names);
		return readsTags(text) ? { ok: false, why: TAG } : { ok: true, names: [...names].sort() };
	} catch (cause) {
		const code = cause instanceof Error ? cause.message : '';
		return {
			ok: false,
			why: WHY[code] ?? 'choices are written {count, plural, one {# tooth} other {# teeth}}',
		};
	}
}

const TAG = 'a < with a letter behind it is not possible here';

/** Whether the screen would take a part of the text for a tag, and stumble over it. */
function readsTags(text: string): boolean {
	if (!text.includes('<')) return false;
	try {
		const isTag = (node: MessageNode): boolean =>
			node.type === 8 || Object.values(node.options ?? {}).some((option) => option.value.some(isTag));
		return (new IntlMessageFormat(text, 'en').getAst() as MessageNode[]).some(isTag);
	} catch {
		return true;
	}
}

function collect(nodes: MessageNode[], names: Set<string>): void {
	for (const node of nodes) {
		if (node.type >= 1 && node.type <= 6) names.add(String(node.value));
		for (const option of Object.values(node.options ?? {})) collect(option.value, names);
	}
}

/** A text with broken braces as a message that shows exactly what was typed. */
export function literalMessage(text: string): string {
	const doubled = text.replace(/'/g, "''");
	const brace = doubled.search(/[{}<>]/);
	return brace < 0 ? doubled : `${doubled.slice(0, brace)}'${doubled.slice(brace)}'`;
}
