import { appendFileSync, closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { terminalLogger, type Logger, type LogFields } from '../logger';
import { createLogFile, LOG_FILE, type LogFile } from './logFile';
import { logEntry, logLine, readLogLines, type LogEntry, type LogLevel } from './logLine';
import { createRecentLog, type RecentLog } from './recentLog';

export interface ServerLog extends Logger {
	/** a fault of ours; the terminal gets the whole story, the file the message and where it came from */
	error(message: string, cause: unknown, fields?: LogFields): void;
	/** of a process that ends: written before anything else happens; the terminal is told by whatever ends it */
	last(message: string, cause: unknown): void;
	tail: RecentLog['tail'];
	/** lines that the disk would not take, and why */
	readonly file: Pick<LogFile, 'lost' | 'trouble'>;
	close(): Promise<void>;
}

const TAIL_bytes = 64_000;

/** Plain words on the terminal, lines of JSON in `DATA_DIR/logs`, and the last ones in memory. */
export function createServerLog(folder: string, terminal: Logger = terminalLogger): ServerLog {
	const file = createLogFile(folder);
	const recent = createRecentLog(earlierEntries(join(folder, LOG_FILE)));
	const keep = (level: LogLevel, message: string, fields?: LogFields): void => {
		const entry = logEntry(level, message, fields);
		recent.add(entry);
		file.write(logLine(entry));
	};
	return {
		info(message, fields) {
			terminal.info(message);
			keep('info', message, fields);
		},
		warn(message, fields) {
			terminal.warn(message);
			keep('warn', message, fields);
		},
		error(message, cause, fields) {
			console.error(message, cause);
			keep('error', message, { ...fields, stack: storyOf(cause) });
		},
		last(message, cause) {
			const entry = logEntry('error', message, { event: 'server-fault', stack: storyOf(cause) });
			try {
				appendFileSync(join(folder, LOG_FILE), logLine(entry));
			} catch {
				// there is nobody left to tell
			}
		},
		tail: (most) => recent.tail(most),
		file,
		close: () => file.close(),
	};
}

const storyOf = (cause: unknown): string =>
	cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);

/** What the log said before this start: the end of its file. */
function earlierEntries(path: string): LogEntry[] {
	let handle: number | undefined;
	try {
		handle = openSync(path, 'r');
		const { size } = fstatSync(handle);
		const bytes = Buffer.alloc(Math.min(size, TAIL_bytes));
		readSync(handle, bytes, 0, bytes.length, size - bytes.length);
		return readLogLines(bytes.toString('utf8'));
	} catch {
		return [];
	} finally {
		if (handle !== undefined) closeSync(handle);
	}
}

const KEY = Symbol.for('tooth-table.log');

/** The process's one log, made at the first call. */
export function getServerLog(): ServerLog {
	const shared = globalThis as { [KEY]?: ServerLog };
	shared[KEY] ??= createServerLog(join(resolve(process.env.DATA_DIR || 'data'), 'logs'));
	return shared[KEY];
}
