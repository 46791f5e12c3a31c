/**
 * The address under which a comparison stands on the public web. `base` is exhibit.yaml's public address, without
 * a slash at its end; `ids` the teeth in their places, left to right.
 */
export function takeHomeAddress(base: string, ids: readonly string[], language: string): string {
	const query = new URLSearchParams({ teeth: ids.join(','), lang: language });
	// commas read better in an address that people may type, and make the code smaller
	return `${base}/compare?${query.toString().replaceAll('%2C', ',')}`;
}
