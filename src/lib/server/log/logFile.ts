import { mkdirSync } from 'node:fs';
import type { Writable } from 'node:stream';
import { createStream } from 'rotating-file-stream';

/** A file is closed at this size, or at midnight (UTC). */
const LARGEST = '5M';
/** So many closed files are kept, and no more than this together. */
export const KEPT_FILES = 30;
export const KEPT_SIZE = '60M';
/** After a failure (a full disk, a folder that is gone) nothing is tried for so long. */
const RETRY_AFTER_ms = 60_000;
/** Lines that wait for the disk; a slow one costs lines, not memory. */
const MOST_WAITING_bytes = 1_000_000;

export const LOG_FILE = 'server.log';

export interface LogFile {
	/** Never throws, and never waits. */
	write(line: string): void;
	/** lines that could not be written since the start */
	readonly lost: number;
	/** why the last of them could not be */
	readonly trouble: string | null;
	close(): Promise<void>;
}

/** Name of a closed file: `server-2026-03-29-1.log`. */
function closedName(time: number | Date | null, index = 1): string {
	if (time === null) return LOG_FILE;
	return `server-${new Date(time).toISOString().slice(0, 10)}-${index}.log`;
}

const openRotating = (folder: string): Writable => {
	mkdirSync(folder, { recursive: true });
	return createStream(closedName as (time: number | Date, index?: number) => string, {
		path: folder,
		size: LARGEST,
		interval: '1d',
		intervalUTC: true,
		maxFiles: KEPT_FILES,
		maxSize: KEPT_SIZE,
		history: '.kept',
	});
};

/** The log on the disk, in files that are closed by size and day; where it cannot be written the server goes on without it. */
export function createLogFile(
	folder: string,
	{
		open = openRotating,
		now = () => performance.now(),
	}: { open?: (folder: string) => Writable; now?: () => number } = {},
): LogFile {
	let stream: Writable | null = null;
	let failedAt_ms = -Infinity;
	let lost = 0;
	let trouble: string | null = null;

	const fail = (cause: unknown): void => {
		trouble = cause instanceof Error ? cause.message : String(cause);
		failedAt_ms = now();
		stream?.destroy();
		stream = null;
	};
	const ready = (): Writable | null => {
		if (stream || now() - failedAt_ms < RETRY_AFTER_ms) return stream;
		try {
			const opened = open(folder);
			opened.on('error', (cause) => {
				if (stream === opened) fail(cause);
			});
			stream = opened;
		} catch (cause) {
			fail(cause);
		}
		return stream;
	};

	return {
		write(line) {
			const to = ready();
			if (!to || to.writableLength > MOST_WAITING_bytes) {
				lost++;
				return;
			}
			to.write(line, (cause) => {
				if (cause) lost++;
			});
		},
		get lost() {
			return lost;
		},
		get trouble() {
			return trouble;
		},
		close: () =>
			new Promise((resolve) => {
				if (!stream) return resolve();
				const closing = stream;
				stream = null;
				closing.end(() => resolve());
				closing.on('error', () => resolve());
			}),
	};
}
