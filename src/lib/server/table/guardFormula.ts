/**
 * Spreadsheets run a cell that begins with one of these as a formula, which may fetch or run things. So a text that
 * begins with one gets an apostrophe in front, which spreadsheets take as "this is text".
 * Source: OWASP, CSV Injection [memory]: = + - @, tab and carriage return.
 */
const STARTS = /^'*[=+\-@\t\r]/;

/** A text as it may stand in a cell; `unguardFormula` gives back exactly what it was. */
export const guardFormula = (text: string): string => (STARTS.test(text) ? `'${text}` : text);

export const unguardFormula = (cell: string): string => (/^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell);

/** Whether a cell would be run: it begins with = + - or @. A dash and a space begin a list or a line of speech. */
export const isFormula = (cell: string): boolean => /^[=+@]|^-(?![\s-]|$)/.test(cell.trimStart());
