import type { StaffAnswer } from '../../content/staffAnswer';
import { staffFetch } from './staffFetch';

/** Sends JSON about passphrase, PIN or session, and gives the answer; null where there was none. */
export async function postStaff(
	url: string,
	method: 'POST' | 'PUT',
	body: object,
	ask: typeof fetch = staffFetch as typeof fetch,
): Promise<StaffAnswer | null> {
	try {
		const response = await ask(url, {
			method,
			headers: { 'content-type': 'application/json' },
			body: JSON.stringify(body),
		});
		const answer = (await response.json()) as Partial<StaffAnswer> | null;
		return answer && typeof answer.ok === 'boolean' ? (answer as StaffAnswer) : null;
	} catch {
		return null;
	}
}
