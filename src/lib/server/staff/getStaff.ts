import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataDir } from '../getStore';
import { terminalLogger, type Logger } from '../logger';
import { hashSecret, SCRYPT_COST, type ScryptCost } from './hashSecret';
import { passphraseFault } from './passphraseRules';
import { createSessions, type Session, type SessionKind, type Sessions } from './sessions';
import { staffFile, type StaffFile } from './staffFile';
import { tryLimit, type TryLimit } from './tryLimit';

export interface Staff {
	file: StaffFile;
	/** of new hashes */
	cost: ScryptCost;
	sessions: Sessions;
	passphraseTries: TryLimit;
	pinTries: TryLimit;
	/** a passphrase that was handed in has been taken up */
	ready: Promise<void>;
}

const MINUTE_ms = 60_000;
/** Ours: somebody who mistypes hardly notices; a guesser gets four tries an hour in the long run. */
const PASSPHRASE_EACH = { free: 5, first_ms: 5_000, most_ms: 15 * MINUTE_ms };
/** All together are slowed down less, so that a stranger cannot keep staff out for long. */
const PASSPHRASE_ALL = { free: 50, first_ms: 1_000, most_ms: 30_000 };
const PIN_EACH = { free: 5, first_ms: 15 * MINUTE_ms, most_ms: 15 * MINUTE_ms };
const PIN_ALL = { free: 25, first_ms: 15 * MINUTE_ms, most_ms: 15 * MINUTE_ms };

const KEY = Symbol.for('tooth-table.staff');

/** What the process knows of its staff, made at the first call; on globalThis for the same reason as the store. */
export function getStaff(): Staff {
	const shared = globalThis as { [KEY]?: Staff };
	return (shared[KEY] ??= openStaff(dataDir(), terminalLogger));
}

/** `passphraseFile`: a file whose first line becomes the passphrase where none is set yet. */
export function openStaff(
	folder: string,
	logger: Logger,
	passphraseFile: string | undefined = process.env.STAFF_PASSPHRASE_FILE,
	cost: ScryptCost = SCRYPT_COST,
): Staff {
	const file = staffFile(join(folder, 'staff.json'));
	return {
		file,
		cost,
		sessions: createSessions({ file: join(folder, 'staff-sessions.json'), logger }),
		passphraseTries: tryLimit(PASSPHRASE_EACH, PASSPHRASE_ALL),
		pinTries: tryLimit(PIN_EACH, PIN_ALL),
		ready: passphraseFile ? takeUp(file, passphraseFile, cost, logger) : Promise.resolve(),
	};
}

async function takeUp(file: StaffFile, path: string, cost: ScryptCost, logger: Logger): Promise<void> {
	if (file.read().is !== 'unset') return;
	try {
		const passphrase = readFileSync(path, 'utf8').split(/\r?\n/, 1)[0].trim();
		const fault = passphraseFault(passphrase);
		if (fault)
			logger.warn(
				`STAFF_PASSPHRASE_FILE: the first line of ${path} is not taken as a passphrase: it is too ${fault}.`,
			);
		else {
			const hashed = await hashSecret(passphrase, cost);
			await file.update(({ is }) => (is === 'unset' ? { version: 1, passphrase: hashed } : null));
		}
	} catch (problem) {
		logger.warn(`STAFF_PASSPHRASE_FILE: no passphrase was set from ${path} (${String(problem)}).`);
	}
}

/** Salt of the secret that opens sessions of this kind; null while none is set. */
export function secretOf(staff: Staff, kind: SessionKind): string | null {
	const state = staff.file.read();
	if (state.is !== 'set') return null;
	return (kind === 'desk' ? state.record.passphrase : state.record.pin)?.salt ?? null;
}

/** The session of a token, while the secret that opened it is still the one that is set. */
export function liveSession(staff: Staff, token: string | undefined): Session | null {
	const session = staff.sessions.find(token);
	return session && session.under === secretOf(staff, session.kind) ? session : null;
}
