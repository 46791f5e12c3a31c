/** Put in by Vite: a hash over the code that sculpts, measures, prepares and paints shapes. */
declare const __SHAPE_CODE__: string;

/**
 * Part of every shape's hash, so that shapes prepared by other code are never served. Outside Vite (a
 * command-line tool run from the sources) nothing is kept from one run to the next.
 */
export const PREPARER_VERSION: string =
	typeof __SHAPE_CODE__ === 'string' ? __SHAPE_CODE__ : `sources-${Date.now()}`;
