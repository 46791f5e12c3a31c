import { placed } from './placed';
import { forgetVisit } from './visitStore';

/**
 * Puts a gallery's screen back to its start with a fresh page. False where the server is away: the browser's own error
 * page would be left standing then.
 */
export async function restartScreen(store: Storage | null): Promise<boolean> {
	const there = await fetch(placed('/healthz'), { cache: 'no-store' }).catch(() => null);
	if (!there) return false;
	forgetVisit(store);
	location.replace(placed('/'));
	return true;
}
