import { browser } from '$app/environment';
import { base } from '$app/paths';
import type { Reroute } from '@sveltejs/kit';
import { languageFolder } from './lib/kiosk/languageFolder';

/**
 * In an export every language but the first has a folder of its own; the rooms in it are the same. A server in a gallery
 * knows no such folders: an address that begins with one must not be a second way to a page.
 */
export const reroute: Reroute = ({ url }) => {
	if (!browser && process.env.EXHIBIT_EXPORT !== '1') return;
	const root = browser ? base : '';
	const path = url.pathname.slice(root.length);
	const folder = languageFolder(path);
	if (folder !== null) return `${root}${path.slice(folder.length + 1) || '/'}`;
};
