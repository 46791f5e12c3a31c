import { IntlMessageFormat } from 'intl-messageformat';
import type { MessageFault } from './messages/codes';

/** Node types of the parsed message: 0 literal, 1 argument, 2 number, 3 date, 4 time, 5 select, 6 plural, 7 `#`, 8 tag. */
interface MessageNode {
	type: number;
	value?: unknown;
	options?: Record<string, { value: MessageNode[] }>;
}

export type CheckedMessage = { ok: true; names: string[] } | { ok: false; why: MessageFault };

const WHY: Readonly<Record<string, MessageFault>> = {
	EXPECT_ARGUMENT_CLOSING_BRACE: 'brace-open',
	UNCLOSED_QUOTE_IN_ARGUMENT_STYLE: 'apostrophe-open',
	EMPTY_ARGUMENT: 'brace-empty',
	MALFORMED_ARGUMENT: 'bad-filler',
	EXPECT_ARGUMENT_TYPE: 'no-type',
	INVALID_ARGUMENT_TYPE: 'bad-type',
	MISSING_OTHER_CLAUSE: 'no-other',
};

/** Whether a screen text can be filled in, and the sorted names of its {fillers}. */
export function checkMessage(text: string): CheckedMessage {
	try {
		const tree = new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }).getAst() as MessageNode[];
		const names = new Set<string>();
		collect(tree, names);
		return readsTags(text) ? { ok: false, why: 'tag' } : { ok: true, names: [...names].sort() };
	} catch (cause) {
		const code = cause instanceof Error ? cause.message : '';
		return {
			ok: false,
			why: WHY[code] ?? 'bad-choices',
		};
	}
}

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
