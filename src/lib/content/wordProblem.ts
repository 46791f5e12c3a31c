import { EN } from './messages/en';
import type { Wording } from './messages/parts';
import type { MessageData, MessageId } from './messages';
import type { Problem } from './problem';

/** The wording of one language: the same ids as in English, asking for the same data. */
export type Words = { readonly [K in MessageId]: (data: MessageData<K>) => Wording };

/** Languages that messages are worded in. */
export const WORDED = ['en'] as const;

const WORDS: Readonly<Record<string, Partial<Words>>> = { en: EN as Words };

/** Words one message in a language, English where there is none in that language. Pure. */
export function wordMessage<K extends MessageId>(id: K, data: MessageData<K>, language = 'en'): Wording {
	const word = WORDS[language]?.[id] ?? (EN[id] as Words[K]);
	return word(data);
}

/**
 * What a problem says and what to do about it, in a language (`fr`; `fr-CH` too). English, as the problem itself
 * has it, for other languages and for a problem that no message stands behind. Pure.
 */
export function wordProblem(
	problem: Pick<Problem, 'id' | 'message' | 'remedy'> & { data?: unknown },
	language: string,
): Wording {
	const { id, data, message, remedy } = problem;
	const primary = language.toLowerCase().split('-')[0];
	if (data === undefined || primary === 'en' || !Object.hasOwn(WORDS, primary) || !Object.hasOwn(EN, id))
		return { message, remedy };
	return wordMessage(id as MessageId, data as never, primary);
}
