/** What is kept beside the words of a log line; never a visitor's address, and nothing secret. */
export type LogFields = Readonly<Record<string, string | number | boolean | null | undefined>> & {
	/** short name of what happened, the same every time */
	event?: string;
};

/** Where the server writes what staff or a technician may want to read. */
export interface Logger {
	info(message: string, fields?: LogFields): void;
	warn(message: string, fields?: LogFields): void;
}

/** Writes to the terminal, one line a message. */
export const terminalLogger: Logger = {
	info: (message) => console.info(message),
	warn: (message) => console.warn(message),
};
