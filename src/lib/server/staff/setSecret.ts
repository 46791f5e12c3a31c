import type { StaffAnswer } from '../../content/staffAnswer';
import type { Staff } from './getStaff';
import { hashSecret } from './hashSecret';
import { passphraseFault, pinFault } from './passphraseRules';
import type { StaffRecord, StaffState } from './staffFile';

/** Sets the passphrase where none is set yet. */
export async function setFirstPassphrase(staff: Staff, passphrase: string): Promise<StaffAnswer> {
	await staff.ready;
	const fault = passphraseFault(passphrase);
	if (fault) return { ok: false, code: fault };
	const hashed = await hashSecret(passphrase.trim(), staff.cost);
	// two at the same time: the first is kept
	return update(
		staff,
		(state) => (state.is === 'unset' ? { version: 1, passphrase: hashed } : null),
		'unset',
	);
}

/** Changes the passphrase; all sessions under the old one end. */
export async function changePassphrase(staff: Staff, passphrase: string): Promise<StaffAnswer> {
	const fault = passphraseFault(passphrase);
	if (fault) return { ok: false, code: fault };
	return change(staff, { passphrase: await hashSecret(passphrase.trim(), staff.cost) });
}

/** Sets or changes the PIN of the staff corner, or with null takes it away; its sessions end. */
export async function setPin(staff: Staff, pin: string | null): Promise<StaffAnswer> {
	if (pin === null) return change(staff, { pin: undefined });
	const fault = pinFault(pin);
	if (fault) return { ok: false, code: fault };
	return change(staff, { pin: await hashSecret(pin, staff.cost) });
}

const change = (
	staff: Staff,
	parts: Partial<Pick<StaffRecord, 'passphrase' | 'pin'>>,
): Promise<StaffAnswer> =>
	update(staff, (state) => (state.is === 'set' ? { ...state.record, ...parts } : null), 'set');

/** Changes the file if it is as expected. */
async function update(
	{ file }: Staff,
	make: (state: StaffState) => StaffRecord | null,
	expected: StaffState['is'],
): Promise<StaffAnswer> {
	try {
		const { is } = await file.update(make);
		if (is === expected) return { ok: true };
		return { ok: false, code: is === 'set' ? 'already' : is };
	} catch {
		return { ok: false, code: 'not-written' };
	}
}
