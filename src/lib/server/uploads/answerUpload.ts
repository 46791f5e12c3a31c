import type { UploadAnswer } from '../../content/scanUpload';
import { wordedIn, wordProblem } from '../../content/wordProblem';
import type { ScanUploads } from './scanUploads';

/** Longest part of a file's name that is told back. */
const MOST_SIGNS = 80;

/** Takes in the scan that a request carries, and words what is the matter with it. */
export async function answerUpload(
	uploads: Pick<ScanUploads, 'receive'>,
	{ headers, body }: { headers: Pick<Headers, 'get'>; body: ReadableStream<Uint8Array> | null },
	name: string,
	lang: string,
): Promise<UploadAnswer> {
	const said = Number(headers.get('content-length') ?? NaN);
	if (!Number.isSafeInteger(said) || body === null) return { ok: false, why: 'cut-off' };
	// only ever shown, and asked for its ending
	const plain = (name.split(/[\\/]/).pop() ?? '').replace(/\p{C}/gu, '').slice(-MOST_SIGNS);
	const received = await uploads.receive(body, said, plain);
	if (received.ok) return { ok: true, ...received.value };
	const { why, reason, problem } = received.problem;
	return {
		ok: false,
		why,
		...(reason && { reason }),
		...(problem && {
			words: { ...wordProblem({ ...problem, message: '', remedy: '' }, lang), lang: wordedIn(lang) },
		}),
	};
}
