import { browser } from '$app/environment';
import { base } from '$app/paths';

/** Where a file or page lies whose address begins at the exhibit's own root: the exhibit may stand in a folder of a site. */
export const placed = (address: string): string => base + address;

/** The path of an address of this site, from the exhibit's own root. */
export const fromRoot = (pathname: string): string =>
	// on the server the base is the way from the page to the root, not the beginning of its path
	(browser ? pathname.slice(base.length) : pathname) || '/';
