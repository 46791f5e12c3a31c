import { rateLimit } from './rateLimit';

/**
 * Refuses requests that would change something when there are too many of them, or one is too large; null lets pass.
 * Reading is never refused. A body that does not say its size is cut off by the server's own limit (BODY_SIZE_LIMIT).
 */
export function postGate(
	{ most, window_ms, mostBytes }: { most: number; window_ms: number; mostBytes: number },
	now?: () => number,
): (request: Pick<Request, 'method' | 'headers'>) => Response | null {
	const pass = rateLimit(most, window_ms, now);
	return ({ method, headers }) => {
		if (method === 'GET' || method === 'HEAD' || method === 'OPTIONS') return null;
		if (Number(headers.get('content-length') ?? 0) > mostBytes) return answer(413);
		return pass() ? null : answer(429);
	};
}

const answer = (status: number): Response =>
	new Response(null, { status, headers: { 'cache-control': 'no-store' } });
