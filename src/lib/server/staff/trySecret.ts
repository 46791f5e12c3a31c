import type { StaffAnswer } from '../../content/staffAnswer';
import { checkSecret } from './checkSecret';
import type { Staff } from './getStaff';
import type { SessionKind } from './sessions';

/** `under`: the salt of the secret, by which a session knows what opened it. */
export type Tried = { ok: true; under: string } | Exclude<StaffAnswer, { ok: true }>;

/** Whether somebody knows the passphrase (`desk`) or the PIN (`corner`), no faster than the limit of tries allows. */
export async function trySecret(
	staff: Staff,
	kind: SessionKind,
	secret: string,
	from: string,
): Promise<Tried> {
	await staff.ready;
	const state = staff.file.read();
	if (state.is === 'damaged') return { ok: false, code: 'damaged' };
	const record =
		state.is === 'set' ? (kind === 'desk' ? state.record.passphrase : state.record.pin) : undefined;
	if (!record) return { ok: false, code: 'unset' };
	const tries = kind === 'desk' ? staff.passphraseTries : staff.pinTries;
	const wait_ms = tries.take(from);
	if (wait_ms > 0) return { ok: false, code: 'wait', wait_s: Math.ceil(wait_ms / 1000) };
	if (await checkSecret(record, secret.trim())) {
		tries.good(from);
		return { ok: true, under: record.salt };
	}
	const next_ms = tries.wait(from);
	if (next_ms > 0) return { ok: false, code: 'wait', wait_s: Math.ceil(next_ms / 1000) };
	return { ok: false, code: 'wrong' };
}

/** HTTP status of an answer. */
export const statusOf = (answer: StaffAnswer): number =>
	answer.ok ? 200 : answer.code === 'wait' ? 429 : answer.code === 'not-understood' ? 400 : 409;
