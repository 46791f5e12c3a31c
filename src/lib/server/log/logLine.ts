import type { LogFields } from '../logger';

export type LogLevel = 'info' | 'warn' | 'error';

export interface LogEntry {
	/** ISO 8601, UTC */
	time: string;
	level: LogLevel;
	event: string;
	message: string;
	[field: string]: string | number | boolean | null | undefined;
}

/** Keys whose values are nobody's business, whoever wrote them. */
const SECRET = /pass|secret|token|cookie|authori[sz]|(^|_)pin($|_)|address|(^|_)ip($|_)/i;
/** Names and passwords in the address of a database or another server. */
const IN_ADDRESS = /\b([a-z][a-z0-9+.-]*:\/\/)[^\s/@]+@/gi;
const LONGEST = 2000;

/** One entry of the log: plain values, nothing secret, no longer than a reader bears. */
export function logEntry(
	level: LogLevel,
	message: string,
	fields: LogFields = {},
	now = new Date(),
): LogEntry {
	const entry: LogEntry = {
		time: now.toISOString(),
		level,
		event: fields.event ?? 'note',
		message: tidy(message),
	};
	for (const [key, value] of Object.entries(fields)) {
		if (value === undefined || key in entry) continue;
		if (SECRET.test(key)) entry[key] = '(not kept)';
		else entry[key] = typeof value === 'string' ? tidy(value) : value;
	}
	return entry;
}

function tidy(text: string): string {
	const plain = text.replace(IN_ADDRESS, '$1');
	return plain.length > LONGEST ? `${plain.slice(0, LONGEST - 1)}…` : plain;
}

/** An entry as a line of JSON; line breaks in texts are escaped, so one entry is one line. */
export const logLine = (entry: LogEntry): string => `${JSON.stringify(entry)}\n`;

/** The entries of a part of a log file; what is no entry, as a line cut in two, is passed over. */
export function readLogLines(text: string): LogEntry[] {
	return text.split('\n').flatMap((line) => {
		try {
			const entry = JSON.parse(line) as LogEntry;
			return typeof entry?.time === 'string' && typeof entry.message === 'string' ? [entry] : [];
		} catch {
			return [];
		}
	});
}
