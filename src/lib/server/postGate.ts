import { rateLimit } from './rateLimit';

/**
 * Refuses requests that would change something when there are too many of them, or one is too large; null lets pass.
 * Reading is never refused. A body has to say its size beforehand, since the server's own limit (BODY_SIZE_LIMIT) is as
 * high as the largest scan. `larger`: what may be sent to one path, whose handler sees to it that only staff do.
 */
export function postGate(
	{
		most,
		window_ms,
		mostBytes,
		larger = {},
	}: { most: number; window_ms: number; mostBytes: number; larger?: Readonly<Record<string, number>> },
	now?: () => number,
): (request: Pick<Request, 'method' | 'headers'>, path?: string) => Response | null {
	const pass = rateLimit(most, window_ms, now);
	return ({ method, headers }, path = '') => {
		if (method === 'GET' || method === 'HEAD' || method === 'OPTIONS') return null;
		const length = headers.get('content-length');
		if (length === null && headers.has('transfer-encoding')) return answer(411);
		const allowed = Object.hasOwn(larger, path) ? larger[path] : mostBytes;
		if (Number(length ?? 0) > allowed) return answer(413);
		return pass() ? null : answer(429);
	};
}

const answer = (status: number): Response =>
	new Response(null, { status, headers: { 'cache-control': 'no-store' } });
