/** An attribute of a page that names another file or page. */
const ATTRIBUTE = /\s(?:href|src|poster)="([^"]*)"/g;
const SRCSET = /\ssrcset="([^"]*)"/g;
/** A file of the exhibit in a page's data: its address begins at the exhibit's root. */
const IN_DATA = /"(\/(?:shapes|pictures|drawings|sounds)\/[^"\\]+)"/g;
const IN_CSS = /url\(\s*["']?([^"')]+)["']?\s*\)/g;

const plain = (text: string): string => text.replaceAll('&amp;', '&');

/** Every address that a page of ours names in its attributes, as it is written; anchors within the page are none. */
export const addressesInPage = (html: string): string[] =>
	[
		...[...html.matchAll(ATTRIBUTE)].map(([, address]) => plain(address)),
		...[...html.matchAll(SRCSET)].flatMap(([, list]) =>
			list.split(',').map((part) => plain(part.trim().split(/\s+/)[0])),
		),
	].filter((address) => address !== '' && !address.startsWith('#'));

/** Every file of the exhibit that a page's data names, by its address from the exhibit's root. */
export const addressesInData = (text: string): string[] =>
	[...text.matchAll(IN_DATA)].map(([, address]) => address);

/** Every file that a style sheet names; what it holds itself is none. */
export const addressesInStyles = (css: string): string[] =>
	[...css.matchAll(IN_CSS)]
		.map(([, address]) => address)
		.filter((address) => !/^(data|blob):|^#/.test(address));
