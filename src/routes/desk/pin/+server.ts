import { z } from 'zod';
import { getStaff } from '../../../lib/server/staff/getStaff';
import { answer, readJson } from '../../../lib/server/staff/readJson';
import { setPin } from '../../../lib/server/staff/setSecret';
import { statusOf } from '../../../lib/server/staff/trySecret';
import { staffOnly } from '../../../lib/server/staffOnly';
import type { RequestHandler } from './$types';

const asking = z.strictObject({ pin: z.string().max(32).nullable() });

/** Sets the PIN of the staff corner, or with null takes it away; answers a StaffAnswer. */
export const PUT: RequestHandler = async (event) => {
	staffOnly(event);
	const asked = await readJson(event.request, asking);
	if (!asked) return answer({ ok: false, code: 'not-understood' }, 400);
	const set = await setPin(getStaff(), asked.pin);
	return answer(set, statusOf(set));
};
