import { join } from 'node:path';
import { PRESERVATIONS, type Preservation } from '../content/exhibit';

/** A shape's hash: 64 hexadecimal digits (SHA-256), nothing else may become part of a path. */
const HASH = /^[0-9a-f]{64}$/;

export const isShapeHash = (text: string): boolean => HASH.test(text);

/** Where the data folder keeps what has been worked out from one shape. */
export interface ShapeFiles {
	folder: string;
	glb: string;
	/** written last: while it is missing, the shape has not been prepared */
	facts: string;
	/** what stands there instead of the facts for a scan whose crown has to be marked first */
	provisional: string;
	/** the line drawing as JSON, in mm */
	drawing: string;
	picture(preservation: Preservation): string;
}

/** Paths for one shape. Throws for anything that is not a hash. */
export function shapeFiles(dataDir: string, hash: string): ShapeFiles {
	if (!isShapeHash(hash)) throw new RangeError('shapeFiles: not the hash of a shape');
	const folder = join(dataDir, 'shapes', hash);
	return {
		folder,
		glb: join(folder, 'shape.glb'),
		facts: join(folder, 'prepared.json'),
		provisional: join(folder, 'provisional.json'),
		drawing: join(folder, 'drawing.json'),
		picture: (preservation) => join(folder, `picture-${preservation}.webp`),
	};
}

/** Address of a prepared GLB on this server. */
export const shapeUrl = (hash: string): string => `/shapes/${hash}.glb`;

/** Address of a line drawing on this server. */
export const drawingUrl = (hash: string): string => `/drawings/${hash}.json`;

/** Address of a tray picture on this server. */
export const pictureUrl = (hash: string, preservation: Preservation): string =>
	`/pictures/${hash}-${preservation}.webp`;

/** Takes `<hash>-<preservation>` apart; null for anything else. */
export function parsePictureName(name: string): { hash: string; preservation: Preservation } | null {
	const hash = name.slice(0, 64);
	const preservation = PRESERVATIONS.find((known) => name.slice(64) === `-${known}`);
	return isShapeHash(hash) && preservation ? { hash, preservation } : null;
}
