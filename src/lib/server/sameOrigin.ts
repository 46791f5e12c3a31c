/** Whether a request that changes something comes from a page of this server. */
export function sameOrigin(request: Request): boolean {
	const origin = request.headers.get('origin');
	if (origin === null) return false;
	try {
		return new URL(origin).host === request.headers.get('host');
	} catch {
		return false; // "null", as from a file or a sandboxed frame
	}
}
