import { EN } from './messages/en';
import { ES } from './messages/es';
import { FR } from './messages/fr';
import type { Wording } from './messages/parts';
import type { MessageData, MessageId } from './messages';

/** The wording of one language: the same ids as in English, asking for the same data. */
export type Words = { readonly [K in MessageId]: (data: MessageData<K>) => Wording };

const WORDS: ReadonlyMap<string, Words> = new Map<string, Words>([
	['en', EN],
	['fr', FR],
	['es', ES],
]);

/** Codes of the languages that messages are worded in. */
export const WORDED: readonly string[] = [...WORDS.keys()];

/** Ids that end in the code of a fault share one message each. */
const FAMILIES: readonly (readonly [RegExp, MessageId])[] = [
	[/^scan-/, 'scan-unreadable'],
	[/^shape-/, 'shape-unmeasured'],
];

/** The language that messages come in where `language` is asked for: `fr-CH` -> `fr`, `de` -> `en`. */
export function wordedIn(language: string): string {
	const primary = language.toLowerCase().split('-')[0];
	return WORDS.has(primary) ? primary : 'en';
}

/** Words one message in a language, in English where it is in none of ours. Pure. */
export function wordMessage<K extends MessageId>(id: K, data: MessageData<K>, language = 'en'): Wording {
	const words: Words = WORDS.get(wordedIn(language))!;
	return words[id](data);
}

/** What can be worded in another language: the message's id and data, and the words it came with. */
export interface Wordable extends Wording {
	id: string;
	data?: unknown;
}

/**
 * What a problem says and what to do about it, in a language. English, as the problem itself has it, for other
 * languages and for a problem without data. Pure.
 */
export function wordProblem({ id, data, message, remedy }: Wordable, language: string): Wording {
	const known = Object.hasOwn(EN, id) ? id : FAMILIES.find(([form]) => form.test(id))?.[1];
	if (data === undefined || known === undefined) return { message, remedy };
	const { of, ...rest } = (data ?? {}) as { of?: unknown };
	// a problem within a problem is worded first
	const inner = isWordable(of) ? { ...rest, said: wordProblem(of, language) } : data;
	return wordMessage(known as MessageId, inner as never, language);
}

const isWordable = (value: unknown): value is Wordable =>
	typeof value === 'object' && value !== null && 'id' in value && 'message' in value && 'remedy' in value;
