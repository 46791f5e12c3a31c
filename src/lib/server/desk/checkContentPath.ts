import { fileKind } from '../../content/fileKind';
import { isLeftBehind } from '../fsReader';

/** Longest name of one file or folder, signs; temporary names made from it stay under 255 bytes. */
const MOST_SIGNS = 80;
const MOST_STEPS = 6;
/** Names that Windows keeps for devices, with or without an ending. Microsoft, "Naming Files, Paths, and Namespaces" */
const DEVICE = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\..*)?$/i;

/**
 * Whether a path names a file that may be changed at the desk: relative, forward slashes, no step that is hidden, leads
 * up, or could not be copied to another system. `%` is refused, so that no encoded step is ever decoded later.
 * `text`: a `.yaml` or `.md` file; `data`: a scan, a recording or an outline. null where it may not be.
 */
export function checkContentPath(path: unknown): 'text' | 'data' | null {
	if (typeof path !== 'string' || path.normalize('NFC') !== path) return null;
	const steps = path.split('/');
	if (steps.length > MOST_STEPS || !steps.every(isGoodName)) return null;
	if (/\.(yaml|md)$/.test(path)) return 'text';
	return ['asset', 'sound', 'drawing'].includes(fileKind(path).kind) ? 'data' : null;
}

function isGoodName(name: string): boolean {
	return (
		name.length > 0 &&
		name.length <= MOST_SIGNS &&
		// hidden files, `.` and `..`
		!name.startsWith('.') &&
		!isLeftBehind(name) &&
		!/[\\<>:"|?*%]|\p{C}|[. ]$|^ /u.test(name) &&
		!DEVICE.test(name)
	);
}
