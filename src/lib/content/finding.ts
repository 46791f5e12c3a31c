import { WARNINGS, type MessageData, type MessageId } from './messages';
import type { Problem } from './problem';
import { wordMessage } from './wordProblem';

/** Line and column, both from 1. */
export interface Place {
	line: number;
	column: number;
}

/** A problem that does not know its file yet. */
export type Finding = Omit<Problem, 'file'>;

export const FILE_START: Place = { line: 1, column: 1 };

/** Words one finding; `data` is what the message of that id asks for. */
export function finding<K extends MessageId>(
	id: K,
	place: Place,
	path: string,
	data: MessageData<K>,
): Finding {
	return {
		id,
		severity: WARNINGS.has(id) ? 'warning' : 'error',
		line: place.line,
		column: place.column,
		path,
		data,
		...wordMessage(id, data),
	};
}
