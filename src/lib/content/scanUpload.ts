import type { Wording } from './messages/parts';

/** Bytes of the largest scan that the desk takes in. */
export const MOST_SCAN_BYTES = 300_000_000;

/** Endings of the scans that the desk takes in; each is one file that holds everything. */
export const UPLOAD_FORMATS = ['glb', 'stl', 'ply', 'obj'] as const;
export type UploadFormat = (typeof UPLOAD_FORMATS)[number];

/** What an uploaded scan was found to be. Lengths are in the file's own unit, whatever that is. */
export interface ScanLook {
	format: UploadFormat;
	bytes: number;
	triangles: number;
	/** sides of the box round it, longest first */
	box: [number, number, number];
	/** null where the crown cannot be found without marks */
	crown: { height: number; baseLength: number; baseWidth: number } | null;
}

export type UploadRefusal =
	/** larger than MOST_SCAN_BYTES */
	| 'too-large'
	/** fewer or more bytes came than were said */
	| 'cut-off'
	/** too many at once */
	| 'busy'
	/** the disk would be full */
	| 'no-room'
	/** the system would not write; `reason` is its code */
	| 'not-written'
	/** it cannot be read or measured; `words` say why */
	| 'unreadable';

export type UploadAnswer =
	| { ok: true; upload: string; look: ScanLook }
	| { ok: false; why: UploadRefusal; reason?: string; words?: Wording & { lang: string } };
