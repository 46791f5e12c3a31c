import { z } from 'zod';
import type { CornerNews } from '../../lib/content/staffAnswer';
import { getStore } from '../../lib/server/getStore';
import { getStaff, secretOf } from '../../lib/server/staff/getStaff';
import { answer, readJson } from '../../lib/server/staff/readJson';
import { statusOf, trySecret } from '../../lib/server/staff/trySecret';
import { giveSession, sessionOf, staffDoor } from '../../lib/server/staffOnly';
import type { RequestHandler } from './$types';

const asking = z.strictObject({ pin: z.string().max(32) });

/** What the staff corner of a gallery's screen says, in the screen's language, and whether a PIN is set. */
export const GET: RequestHandler = async (event) => {
	staffDoor(event, 'corner');
	const staff = getStaff();
	await staff.ready;
	const exhibit = getStore().current();
	const words = { ...exhibit?.ui[event.locals.firstLang], ...exhibit?.ui[event.locals.lang] };
	const news: CornerNews = {
		words: Object.fromEntries(Object.entries(words).filter(([key]) => key.startsWith('staff_'))),
		hasPin: secretOf(staff, 'corner') !== null,
		wait_s: Math.ceil(staff.pinTries.wait(event.getClientAddress()) / 1000),
	};
	return answer(news);
};

/** Opens the corner: `{ pin }` is answered with a StaffAnswer, and a session that calibration and status take. */
export const POST: RequestHandler = async (event) => {
	staffDoor(event, 'corner');
	const asked = await readJson(event.request, asking);
	if (!asked) return answer({ ok: false, code: 'not-understood' }, 400);
	const staff = getStaff();
	const tried = await trySecret(staff, 'corner', asked.pin, event.getClientAddress());
	if (!tried.ok) return answer(tried, statusOf(tried));
	// whoever is signed in at the desk stays so
	if (!sessionOf(event, 'desk'))
		giveSession(event, staff.sessions.begin({ kind: 'corner', gallery: true, under: tried.under }), 'corner');
	return answer({ ok: true });
};
