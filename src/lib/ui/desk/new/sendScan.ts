import { MOST_SCAN_BYTES, type UploadAnswer } from '../../../content/scanUpload';
import { formTokenNow, SIGNED_OUT } from '../staffFetch';

export type Sent =
	UploadAnswer | { ok: false; why: 'signed-out' | 'no-answer' | 'refused' | 'cancelled' | 'empty' };

export interface Sending {
	done: Promise<Sent>;
	cancel(): void;
}

/**
 * Sends a scan to the server, as it stands on the disk. `onprogress` is told the share that has been sent, 0 to 1; `fetch`
 * cannot tell it.
 */
export function sendScan(file: File, lang: string, onprogress: (share: number) => void): Sending {
	if (file.size > MOST_SCAN_BYTES) return at({ ok: false, why: 'too-large' });
	if (file.size === 0) return at({ ok: false, why: 'empty' });
	let request: XMLHttpRequest | null = null;
	let cancelled = false;
	const post = (token: string | null): Promise<Sent> =>
		new Promise((resolve) => {
			if (cancelled) return resolve({ ok: false, why: 'cancelled' });
			request = new XMLHttpRequest();
			request.open('POST', `/desk/new/scan?${new URLSearchParams({ name: file.name, lang })}`);
			request.setRequestHeader('x-staff-token', token ?? '');
			// another one would be taken for a form
			request.setRequestHeader('content-type', 'application/octet-stream');
			request.responseType = 'json';
			request.upload.addEventListener('progress', ({ loaded, total }) =>
				onprogress(total ? loaded / total : 0),
			);
			request.addEventListener('load', () => resolve(sentOf(request!)));
			request.addEventListener('error', () => resolve({ ok: false, why: 'no-answer' }));
			request.addEventListener('abort', () => resolve({ ok: false, why: 'cancelled' }));
			request.send(file);
		});
	const done = (async (): Promise<Sent> => {
		const first = await post(await formTokenNow().catch(() => null));
		if (first.ok || first.why !== 'signed-out') return first;
		// somebody has signed in again in another tab
		const token = await formTokenNow(true).catch(() => null);
		const second = token === null ? first : await post(token);
		if (!second.ok && second.why === 'signed-out') window.dispatchEvent(new CustomEvent(SIGNED_OUT));
		return second;
	})();
	return {
		done,
		cancel() {
			cancelled = true;
			request?.abort();
		},
	};
}

function sentOf({ status, response }: XMLHttpRequest): Sent {
	if (status === 401 || status === 403) return { ok: false, why: 'signed-out' };
	if (status === 413) return { ok: false, why: 'too-large' };
	const answer = response as Partial<UploadAnswer> | null;
	if (status !== 200 || typeof answer?.ok !== 'boolean') return { ok: false, why: 'refused' };
	return answer as UploadAnswer;
}

const at = (sent: Sent): Sending => ({ done: Promise.resolve(sent), cancel: () => undefined });
