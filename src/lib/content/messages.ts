/**
 * Every message that a curator reads about a file: its id, its data, and whether it is a warning.
 * Ids are stable: tests, notes and habits rest on them. The wording of each language stands in `messages/`;
 * `wordProblem` picks it.
 */

import type { EN } from './messages/en';

export { exampleFor, hasExample } from './messages/examples';

export type MessageId = keyof typeof EN;
/** What the message of that id is about, as plain values; null where there is nothing to say but the message. */
export type MessageData<K extends MessageId> = Parameters<(typeof EN)[K]> extends [infer D] ? D : null;

/** Problems that are worth knowing but leave nothing out. */
export const WARNINGS: ReadonlySet<MessageId> = new Set<MessageId>([
	'screen-room-not-shown',
	'screen-without-rooms',
	'screen-title-twice',
	'screen-day-twice',
	'unknown-file',
	'language-not-shown',
	'missing-translation',
	'hash-cuts-text',
	'idle-too-short',
	'warning-too-short',
	'unlike-the-card',
	'unlikely-size',
	'crown-base-not-marked',
	'not-one-tooth',
	'several-pieces',
	'colour-unreadable',
	'coarse-mesh',
	'mark-off-surface',
	'source-left-out',
	'bed-missing',
	'feature-not-translated',
	'name-without-feature',
	'alt-missing',
	'alt-repeats-title',
	'long-sentence',
	'long-label',
	'long-line',
	'hard-to-read',
	'too-certain',
	'number-not-marked',
	'number-without-source',
	'picture-left-out',
	'code-shown-as-text',
	'text-not-shown',
	'text-not-translated',
	'text-not-used',
	'show-is-over',
	'no-room-shown',
	'first-not-there',
]);
