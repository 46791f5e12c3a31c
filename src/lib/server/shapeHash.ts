import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import type { CrownMarks } from '../domain/measure/crownMeasures';
import type { ToothForm } from '../domain/tooth/form';
import { canonicalJson } from './canonicalJson';
import { PREPARER_VERSION } from './prepare/preparerVersion';
import type { ScanUnits } from './scan/readScan';

/** SHA-256 of a text, 64 hexadecimal digits. */
export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** SHA-256 of a file's bytes, read piece by piece. */
export async function sha256OfFile(path: string): Promise<string> {
	const hash = createHash('sha256');
	for await (const chunk of createReadStream(path)) hash.update(chunk as Uint8Array);
	return hash.digest('hex');
}

const known = new WeakMap<ToothForm, string>();

/** Hash of a model's shape: its form and the preparer's version. */
export function formHash(form: ToothForm): string {
	let hash = known.get(form);
	if (hash === undefined) {
		hash = sha256(canonicalJson({ version: PREPARER_VERSION, form }));
		known.set(form, hash);
	}
	return hash;
}

/**
 * Hash of a scan's shape: its bytes, how they are read, the marks on its crown, whether its own colours are left out,
 * and the preparer's version.
 */
export const scanHash = (
	bytesHash: string,
	format: string,
	units: ScanUnits,
	crown?: CrownMarks,
	plain?: boolean,
): string =>
	sha256(canonicalJson({ version: PREPARER_VERSION, bytes: bytesHash, format, units, crown, plain }));
