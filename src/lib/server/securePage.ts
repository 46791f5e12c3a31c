import { policyHash } from './liftStyles';

/** For what is not a page: it may do nothing at all, if a browser should ever open it by itself. */
const NOTHING = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/**
 * What an answer tells a browser to refuse. `css`: the style element of the page, the only one that its policy lets in.
 * `inDesk`: a page of this server may hold it in a frame.
 */
export function securePage(headers: Headers, css: string, inDesk = false): void {
	const policy = headers.get('content-security-policy');
	if (policy === null) headers.set('content-security-policy', NOTHING);
	else if (css !== '')
		headers.set(
			'content-security-policy',
			policy.replace(/(^|; )style-src [^;]*/, (directive) => `${directive} ${policyHash(css)}`),
		);
	if (inDesk && policy !== null)
		headers.set(
			'content-security-policy',
			headers.get('content-security-policy')!.replace("frame-ancestors 'none'", "frame-ancestors 'self'"),
		);
	headers.set('x-content-type-options', 'nosniff');
	headers.set('referrer-policy', 'no-referrer');
	headers.set('permissions-policy', 'camera=(), microphone=(), geolocation=(), usb=(), serial=()');
	headers.set('cross-origin-opener-policy', 'same-origin');
	// what other sites may show says so itself
	if (!headers.has('cross-origin-resource-policy'))
		headers.set('cross-origin-resource-policy', 'same-origin');
}
