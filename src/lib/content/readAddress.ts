import { fail, ok, type Result } from '../domain/result';

export type AddressFault = 'unreadable' | 'not-https' | 'name' | 'more';

/**
 * An address on the web under which anyone may find the exhibit: https, no name or password in it, nothing after
 * its path. The result has no slash at its end.
 */
export function readAddress(written: string): Result<string, AddressFault> {
	let url: URL;
	try {
		url = new URL(written);
	} catch {
		return fail('unreadable');
	}
	if (url.protocol !== 'https:') return fail('not-https');
	if (url.username !== '' || url.password !== '') return fail('name');
	if (url.search !== '' || url.hash !== '' || /[?#]/.test(written)) return fail('more');
	return ok(`${url.origin}${url.pathname}`.replace(/\/+$/, ''));
}
