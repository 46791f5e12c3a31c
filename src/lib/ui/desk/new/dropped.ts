/** A scan dropped on one page of the desk for another, which takes it. */
let dropped: File | null = null;

export const putDropped = (file: File): void => void (dropped = file);

/** The scan that was dropped; once. */
export function takeDropped(): File | null {
	const file = dropped;
	dropped = null;
	return file;
}
