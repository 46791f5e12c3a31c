import { randomBytes } from 'node:crypto';

/** A version's time and a name of its own that begins with it; safe in an address. */
export function versionId(now: number): { id: string; time: string } {
	const time = new Date(now).toISOString();
	return { id: `${time.replace(/[-:.]/g, '')}-${randomBytes(4).toString('hex')}`, time };
}
