/** Where the server writes what staff or a technician may want to read. */
export interface Logger {
	info(message: string): void;
	warn(message: string): void;
}

/** Writes to the terminal, one line a message. */
export const terminalLogger: Logger = {
	info: (message) => console.info(message),
	warn: (message) => console.warn(message),
};
