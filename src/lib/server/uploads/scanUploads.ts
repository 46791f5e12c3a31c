import { randomBytes } from 'node:crypto';
import * as nodeFs from 'node:fs/promises';
import { join } from 'node:path';
import type { ScanLook, UploadRefusal } from '../../content/scanUpload';
import { fail, ok, type Result } from '../../domain/result';
import { codeOf } from '../desk/deskFs';
import type { LookProblem } from './lookAtScan';

type UploadFs = Pick<
	typeof nodeFs,
	'mkdir' | 'open' | 'rename' | 'rm' | 'readdir' | 'stat' | 'statfs' | 'readFile' | 'writeFile'
>;

export interface ScanUploadsOptions {
	dataDir: string;
	/** milliseconds since 1970 */
	now: () => number;
	/** reads what has come and says what it is; may take a while */
	look: (path: string, name: string) => Promise<Result<ScanLook, LookProblem>>;
	mostBytes: number;
	/** uploads that may be under way together */
	mostAtOnce?: number;
	/** how long one is kept that nobody makes a specimen of, ms */
	kept_ms?: number;
	/** bytes that must stay free on the disk */
	spareBytes?: number;
	fs?: UploadFs;
}

export interface UploadFailure {
	why: UploadRefusal;
	/** the system's code (ENOSPC, EACCES) */
	reason?: string;
	/** of `unreadable` */
	problem?: LookProblem;
}

export interface KeptUpload {
	path: string;
	look: ScanLook;
}

/** Scans on their way into the exhibit: below the data folder, each under a name of ours, until a specimen is made of it. */
export interface ScanUploads {
	/** Takes a scan in as it comes, never whole in memory. What cannot be used leaves nothing behind. */
	receive(
		body: ReadableStream<Uint8Array>,
		/** as the sender says */
		bytes: number,
		name: string,
	): Promise<Result<{ upload: string; look: ScanLook }, UploadFailure>>;
	/** null where there is none of that name (any more) */
	find(upload: string): Promise<KeptUpload | null>;
	discard(upload: string): Promise<void>;
	/** Removes what nobody has used, and what an earlier process left half-written. */
	sweep(): Promise<void>;
}

const UPLOAD_NAME = /^[0-9a-f]{32}$/;

export function scanUploads({
	dataDir,
	now,
	look,
	mostBytes,
	mostAtOnce = 2,
	kept_ms = 6 * 3_600_000,
	spareBytes = 200e6,
	fs = nodeFs,
}: ScanUploadsOptions): ScanUploads {
	const folder = join(dataDir, 'uploads');
	/** under way in this process */
	const coming = new Set<string>();
	const fileOf = (upload: string): string => join(folder, `${upload}.scan`);
	const lookOf = (upload: string): string => join(folder, `${upload}.json`);

	async function remove(upload: string): Promise<void> {
		await fs.rm(fileOf(upload), { force: true });
		await fs.rm(lookOf(upload), { force: true });
	}

	async function sweep(): Promise<void> {
		const names = await fs.readdir(folder).catch((): string[] => []);
		for (const name of names) {
			const upload = name.slice(0, name.lastIndexOf('.'));
			if (coming.has(upload)) continue;
			// its look is written last: without it nobody was told of the scan
			const whole = names.includes(`${upload}.json`) && names.includes(`${upload}.scan`);
			const age = now() - (await fs.stat(join(folder, name)).catch(() => ({ mtimeMs: 0 }))).mtimeMs;
			if (!whole || age > kept_ms) await fs.rm(join(folder, name), { force: true, recursive: true });
		}
	}

	/** Writes the stream; the sum of its bytes must be what was said. */
	async function take(body: ReadableStream<Uint8Array>, bytes: number, path: string): Promise<boolean> {
		const file = await fs.open(path, 'wx', 0o600);
		try {
			let came = 0;
			for await (const part of body as unknown as AsyncIterable<Uint8Array>) {
				came += part.length;
				if (came > bytes) return false;
				await file.writeFile(part);
			}
			await file.sync();
			return came === bytes;
		} finally {
			await file.close();
		}
	}

	async function roomFor(bytes: number): Promise<boolean> {
		const { bavail, bsize } = await fs.statfs(folder);
		return bavail * bsize > bytes + spareBytes;
	}

	return {
		async receive(body, bytes, name) {
			if (bytes > mostBytes) return fail({ why: 'too-large' });
			if (coming.size >= mostAtOnce) return fail({ why: 'busy' });
			const upload = randomBytes(16).toString('hex');
			coming.add(upload);
			try {
				await fs.mkdir(folder, { recursive: true });
				await sweep();
				if (!(await roomFor(bytes))) return fail({ why: 'no-room' });
				let whole: boolean;
				try {
					whole = await take(body, bytes, fileOf(upload));
				} catch (cause) {
					const reason = codeOf(cause);
					await remove(upload);
					// a connection that was cut has codes of its own
					return fail(
						/^(ENOSPC|EDQUOT|EACCES|EROFS|EIO)$/.test(reason)
							? { why: 'not-written', reason }
							: { why: 'cut-off' },
					);
				}
				const looked = whole ? await look(fileOf(upload), name) : null;
				if (!looked?.ok) {
					await remove(upload);
					return fail(looked ? { why: 'unreadable', problem: looked.problem } : { why: 'cut-off' });
				}
				await fs.writeFile(lookOf(upload), JSON.stringify(looked.value), { mode: 0o600 });
				return ok({ upload, look: looked.value });
			} catch (cause) {
				await remove(upload).catch(() => undefined);
				return fail({ why: 'not-written', reason: codeOf(cause) });
			} finally {
				coming.delete(upload);
			}
		},
		async find(upload) {
			if (!UPLOAD_NAME.test(upload) || coming.has(upload)) return null;
			try {
				const found = JSON.parse(await fs.readFile(lookOf(upload), 'utf8')) as ScanLook;
				const { size } = await fs.stat(fileOf(upload));
				return size === found.bytes ? { path: fileOf(upload), look: found } : null;
			} catch {
				return null;
			}
		},
		async discard(upload) {
			if (UPLOAD_NAME.test(upload) && !coming.has(upload)) await remove(upload);
		},
		sweep,
	};
}
