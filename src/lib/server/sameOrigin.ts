/** Whether a request that changes something comes from a page of this server. */
export function sameOrigin({ headers }: Pick<Request, 'headers'>): boolean {
	const origin = headers.get('origin');
	if (origin === null) return false;
	try {
		const { protocol, host } = new URL(origin);
		return (protocol === 'http:' || protocol === 'https:') && host === headers.get('host');
	} catch {
		return false; // "null", as from a file or a sandboxed frame
	}
}
