import { z } from 'zod';
import { getStaff, secretOf } from '../../../lib/server/staff/getStaff';
import { answer, readJson } from '../../../lib/server/staff/readJson';
import { changePassphrase, setFirstPassphrase } from '../../../lib/server/staff/setSecret';
import { statusOf, trySecret } from '../../../lib/server/staff/trySecret';
import { giveSession, isFromHere, staffDoor, staffOnly, type Asked } from '../../../lib/server/staffOnly';
import type { RequestHandler } from './$types';

const first = z.strictObject({ passphrase: z.string().max(4096) });
const changed = z.strictObject({ old: z.string().max(4096), passphrase: z.string().max(4096) });

/** Sets the first passphrase, at the machine itself, and signs in; answers a StaffAnswer. */
export const POST: RequestHandler = async (event) => {
	staffDoor(event);
	if (!isFromHere(event)) return answer({ ok: false, code: 'not-here' }, 409);
	const asked = await readJson(event.request, first);
	if (!asked) return answer({ ok: false, code: 'not-understood' }, 400);
	const set = await setFirstPassphrase(getStaff(), asked.passphrase);
	if (!set.ok) return answer(set, statusOf(set));
	begin(event, event.locals.screen !== null);
	return answer({ ok: true });
};

/** Changes the passphrase, for who knows the old one; every other session ends. Answers a StaffAnswer. */
export const PUT: RequestHandler = async (event) => {
	const { gallery } = staffOnly(event);
	const asked = await readJson(event.request, changed);
	if (!asked) return answer({ ok: false, code: 'not-understood' }, 400);
	const staff = getStaff();
	const known = await trySecret(staff, 'desk', asked.old, event.getClientAddress());
	if (!known.ok) return answer(known, statusOf(known));
	const set = await changePassphrase(staff, asked.passphrase);
	if (!set.ok) return answer(set, statusOf(set));
	begin(event, gallery);
	return answer({ ok: true });
};

function begin(event: Asked, gallery: boolean): void {
	const staff = getStaff();
	const under = secretOf(staff, 'desk');
	if (under === null) return;
	giveSession(event, staff.sessions.begin({ kind: 'desk', gallery, under }), 'desk');
}
