/** Keeps a text together that runs from left to right, such as a number with its unit (Unicode, UAX 9: LRI, PDI). */
export const isolateFromLeft = (text: string): string => `\u2066${text}\u2069`;

/** Keeps a text together that takes its direction from itself (FSI, PDI). */
export const isolateOwn = (text: string): string => `\u2068${text}\u2069`;
