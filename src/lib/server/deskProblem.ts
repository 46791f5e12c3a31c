import type { Finding } from '../content/finding';
import type { MessageId } from '../content/messages';
import type { Wording } from '../content/messages/parts';
import { wordProblem } from '../content/wordProblem';

/** Why something asked for at the desk was not done, in words for the person who asked. */
export interface DeskProblem {
	/** stable, for code; its words stand under `desk-<code>` in content/messages */
	code: DeskCode;
	/** what it is about, plain values */
	data?: unknown;
	/** what is the matter, one or two plain sentences; English */
	message: string;
	/** what to do; English */
	remedy: string;
}

export type DeskCode = MessageId extends infer K ? (K extends `desk-${infer C}` ? C : never) : never;

/** Words a problem of the desk. `data` is what its message asks for, or the finding behind it (`brokenBy`). */
export function deskProblem(code: DeskCode, data: unknown = null): DeskProblem {
	const words = wordProblem({ id: `desk-${code}`, data, message: code, remedy: '' }, 'en');
	return { code, data, ...words };
}

/** The finding that stands in the way, as data of a problem; null when there is none to name. */
export const brokenBy = (found: Finding | undefined) => (found ? { line: found.line, of: found } : null);

/** The same in another language. */
export const wordDesk = (problem: DeskProblem, language: string): Wording =>
	wordProblem({ id: `desk-${problem.code}`, ...problem }, language);
