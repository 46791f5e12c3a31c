import { timingSafeEqual } from 'node:crypto';
import { derive, type SecretRecord } from './hashSecret';

/** Whether this is the secret of which the record was made. Takes as long for a wrong one as for the right one. */
export async function checkSecret(record: SecretRecord, secret: string): Promise<boolean> {
	const hash = Buffer.from(record.hash, 'base64');
	const derived = await derive(secret, Buffer.from(record.salt, 'base64'), hash.length, record);
	return timingSafeEqual(hash, derived);
}
