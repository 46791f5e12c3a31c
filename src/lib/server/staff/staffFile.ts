import { readFileSync, statSync } from 'node:fs';
import { z } from 'zod';
import { writeAtomically } from '../writeAtomically';
import { secretRecord } from './hashSecret';

const staffRecord = z.strictObject({
	version: z.literal(1),
	passphrase: secretRecord,
	pin: secretRecord.optional(),
});
export type StaffRecord = z.infer<typeof staffRecord>;

/** `damaged`: there is a file, but not one of ours. It lets nobody in, and nobody set a new passphrase over it. */
export type StaffState = { is: 'unset' } | { is: 'damaged' } | { is: 'set'; record: StaffRecord };

export interface StaffFile {
	/** What the file says now; read again only after it has changed, so that deleting it counts at once. */
	read(): StaffState;
	/**
	 * One change after another: `change` sees what the file says when its turn has come, and null leaves it so. Written
	 * for its owner alone; throws where the folder cannot be written. Gives what the file said before.
	 */
	update(change: (state: StaffState) => StaffRecord | null): Promise<StaffState>;
}

/** The hashes of passphrase and PIN in DATA_DIR/staff.json. */
export function staffFile(path: string): StaffFile {
	let known: { stamp: string; state: StaffState } | null = null;
	let turn: Promise<unknown> = Promise.resolve();
	const read = (): StaffState => {
		const stamp = stampOf(path);
		if (known?.stamp !== stamp) known = { stamp, state: stamp === '' ? { is: 'unset' } : load(path) };
		return known.state;
	};
	return {
		read,
		update(change) {
			const done = turn.then(async () => {
				const before = read();
				const record = change(before);
				if (record) await writeAtomically(path, `${JSON.stringify(record, null, '\t')}\n`, undefined, 0o600);
				known = null;
				return before;
			});
			turn = done.catch(() => undefined);
			return done;
		},
	};
}

/** Changes with the file; empty where there is none. */
function stampOf(path: string): string {
	try {
		const { ino, size, mtimeMs } = statSync(path);
		return `${ino} ${size} ${mtimeMs}`;
	} catch (problem) {
		return (problem as NodeJS.ErrnoException).code === 'ENOENT' ? '' : 'unreadable';
	}
}

function load(path: string): StaffState {
	try {
		return { is: 'set', record: staffRecord.parse(JSON.parse(readFileSync(path, 'utf8'))) };
	} catch (problem) {
		return (problem as NodeJS.ErrnoException).code === 'ENOENT' ? { is: 'unset' } : { is: 'damaged' };
	}
}
