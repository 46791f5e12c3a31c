import { pageId } from './pageId';

/** Orders of the server to this page, from the connection that hears them to whoever follows them. */
const followers = new Set<() => void>();

/** Follows the order to load the page anew; returns what ends that. */
export function onRestart(follow: () => void): () => void {
	followers.add(follow);
	return () => void followers.delete(follow);
}

export function orderRestart(): void {
	for (const follow of followers) follow();
}

/** Tells the server which screen listens; in a browser only. */
export const asWhom = (name: string | null): string =>
	`?page=${pageId()}${name === null ? '' : `&screen=${encodeURIComponent(name)}`}`;
