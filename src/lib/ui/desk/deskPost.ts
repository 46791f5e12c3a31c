import { staffFetch } from './staffFetch';

/** signed-out: sign in and send again; nothing was written. no-answer: the server is away. refused: it would not. */
export type Posted<T> = { ok: true; value: T } | { ok: false; why: 'signed-out' | 'no-answer' | 'refused' };

/** Sends what changes something at the desk, as JSON. What was typed stays with the caller, whatever comes back. */
export async function deskPost<T>(
	path: string,
	body: unknown,
	ask: (path: string, init: RequestInit) => Promise<Response> = staffFetch,
): Promise<Posted<T>> {
	try {
		const response = await ask(path, {
			method: 'POST',
			headers: { 'content-type': 'application/json' },
			body: JSON.stringify(body),
		});
		const isAnswer = /^application\/json\b/.test(response.headers.get('content-type') ?? '');
		if (response.ok && isAnswer) return { ok: true, value: (await response.json()) as T };
		return { ok: false, why: [401, 403].includes(response.status) ? 'signed-out' : 'refused' };
	} catch {
		return { ok: false, why: 'no-answer' };
	}
}
