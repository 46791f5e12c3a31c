import { z } from 'zod';
import type { SessionNews } from '../../../lib/content/staffAnswer';
import { getStaff } from '../../../lib/server/staff/getStaff';
import { answer, readJson } from '../../../lib/server/staff/readJson';
import type { Session } from '../../../lib/server/staff/sessions';
import { statusOf, trySecret } from '../../../lib/server/staff/trySecret';
import {
	formToken,
	giveSession,
	SESSION_COOKIE,
	sessionOf,
	staffDoor,
	staffOnly,
	takeSession,
	type Asked,
} from '../../../lib/server/staffOnly';
import type { RequestHandler } from './$types';

const asking = z.strictObject({ passphrase: z.string().max(4096) });

/** What is left of the session, and its form token; null for who is not signed in. Asking does not count as use. */
export const GET: RequestHandler = (event) => {
	staffDoor(event, 'corner');
	const session = sessionOf(event);
	return answer(session && news(event, session));
};

/** Signs in: `{ passphrase }` is answered with a StaffAnswer. */
export const POST: RequestHandler = async (event) => {
	staffDoor(event);
	const asked = await readJson(event.request, asking);
	if (!asked) return answer({ ok: false, code: 'not-understood' }, 400);
	const staff = getStaff();
	const tried = await trySecret(staff, 'desk', asked.passphrase, event.getClientAddress());
	if (!tried.ok) return answer(tried, statusOf(tried));
	const before = sessionOf(event);
	if (before) staff.sessions.end(before);
	giveSession(
		event,
		staff.sessions.begin({ kind: 'desk', gallery: event.locals.screen !== null, under: tried.under }),
		'desk',
	);
	return answer({ ok: true });
};

/** Somebody is at work: the session lasts longer. */
export const PUT: RequestHandler = (event) => answer(news(event, staffOnly(event, 'corner')));

/** Signs out. */
export const DELETE: RequestHandler = (event) => {
	getStaff().sessions.end(staffOnly(event, 'corner'));
	takeSession(event);
	return answer({ ok: true });
};

function news({ cookies }: Pick<Asked, 'cookies'>, session: Session): SessionNews {
	const { unused_ms, all_ms } = getStaff().sessions.left(session);
	return {
		kind: session.kind,
		token: formToken(cookies.get(SESSION_COOKIE) ?? ''),
		unused_s: Math.floor(unused_ms / 1000),
		all_s: Math.floor(all_ms / 1000),
	};
}
