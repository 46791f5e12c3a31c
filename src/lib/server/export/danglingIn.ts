import { posix } from 'node:path';
import { addressesInData, addressesInPage, addressesInStyles } from './addressesIn';

/** Another file of the program, as scripts name it: from where they stand. */
const IN_SCRIPT = /["'`](\.{1,2}\/[\w./@-]+\.(?:js|css|wasm|woff2?|svg|png|webp))["'`]/g;

/**
 * What an export names but does not hold, or names in a way that does not work everywhere: outside addresses, and addresses
 * from the root of the site, since the export may stand in a folder. One line for each; empty for a good export.
 */
export function danglingIn(files: ReadonlyMap<string, Uint8Array>): string[] {
	const problems = new Set<string>();
	const check = (file: string, address: string): void => {
		if (/^data:/.test(address)) return;
		if (/^([a-z]+:|\/)/i.test(address)) problems.add(`${file}: ${address} leads out of the export`);
		else {
			const path = decodeURIComponent(address.replace(/[?#].*$/, ''));
			const full = posix
				.normalize(posix.join(posix.dirname(file), path))
				.replace(/^\.\//, '')
				.replace(/^\.$/, '');
			const target = full === '' || full.endsWith('/') ? `${full}index.html` : full;
			if (!files.has(target)) problems.add(`${file}: ${address} is missing`);
		}
	};
	for (const [file, bytes] of files) {
		if (!/\.(html|json|css|js)$/.test(file)) continue;
		const text = new TextDecoder().decode(bytes);
		if (file.endsWith('.html')) addressesInPage(text).forEach((address) => check(file, address));
		else if (file.endsWith('__data.json')) {
			// from the exhibit's root: the page's program knows where that is
			for (const address of addressesInData(text))
				if (!files.has(decodeURIComponent(address.slice(1).replace(/\?.*$/, ''))))
					problems.add(`${file}: ${address} is missing`);
		} else if (file.endsWith('.css')) addressesInStyles(text).forEach((address) => check(file, address));
		else if (file.endsWith('.js'))
			[...text.matchAll(IN_SCRIPT)].forEach(([, address]) => check(file, address));
	}
	return [...problems].sort();
}
