import { randomBytes, scrypt } from 'node:crypto';
import { z } from 'zod';

/** A passphrase or PIN as it is kept: with its own salt and cost, so that a later version may raise the cost. */
export const secretRecord = z.strictObject({
	kind: z.literal('scrypt'),
	/** cost, block size and lanes, in the words of RFC 7914 */
	n: z
		.int()
		.min(2)
		.max(2 ** 20),
	r: z.int().min(1).max(32),
	p: z.int().min(1).max(16),
	salt: z.base64().min(8),
	hash: z.base64().min(40),
});
export type SecretRecord = z.infer<typeof secretRecord>;
export type ScryptCost = Pick<SecretRecord, 'n' | 'r' | 'p'>;

/** 128 MiB and about half a second. Source: OWASP Password Storage Cheat Sheet, least values for scrypt. */
export const SCRYPT_COST: ScryptCost = { n: 2 ** 17, r: 8, p: 1 };
const HASH_bytes = 64;

/** What is kept of a secret, with a new salt. */
export async function hashSecret(secret: string, cost: ScryptCost = SCRYPT_COST): Promise<SecretRecord> {
	const salt = randomBytes(16);
	const hash = await derive(secret, salt, HASH_bytes, cost);
	return { kind: 'scrypt', ...cost, salt: salt.toString('base64'), hash: hash.toString('base64') };
}

let before: Promise<unknown> = Promise.resolve();

/**
 * The scrypt of a secret (RFC 7914). The same letters typed on another keyboard are the same secret: NFKC, as NIST
 * SP 800-63B, 5.1.1.2 advises. One at a time, since each takes 128 MiB.
 */
export function derive(
	secret: string,
	salt: Buffer,
	bytes: number,
	{ n, r, p }: ScryptCost,
): Promise<Buffer> {
	const made = before.then(
		() =>
			new Promise<Buffer>((resolve, reject) => {
				const maxmem = 128 * r * (n + p + 2) + 1_000_000;
				scrypt(secret.normalize('NFKC'), salt, bytes, { N: n, r, p, maxmem }, (error, key) =>
					error ? reject(error) : resolve(key),
				);
			}),
	);
	before = made.catch(() => undefined);
	return made;
}
