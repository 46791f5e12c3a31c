import { createHash, randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { Logger } from '../logger';
import { writeAtomically } from '../writeAtomically';

/** `desk`: by the passphrase, for everything. `corner`: by the PIN, for calibration and status only. */
export type SessionKind = 'desk' | 'corner';

const session = z.strictObject({
	/** hash of the token; the token itself is known to the browser alone */
	id: z.string(),
	kind: z.enum(['desk', 'corner']),
	/** on a screen that stands in the gallery */
	gallery: z.boolean(),
	/** salt of the secret that opened it: with another secret it has ended */
	under: z.string(),
	begun_ms: z.number(),
	used_ms: z.number(),
});
export type Session = z.infer<typeof session>;

const MINUTE_ms = 60_000;
/** After so long it ends, used or not. Ours: a working day, and as long as somebody stands at the screen. */
export const ENDS_AFTER_ms: Readonly<Record<SessionKind, number>> = {
	desk: 480 * MINUTE_ms,
	corner: 5 * MINUTE_ms,
};
/** Unused for so long it ends. Ours: visitors come to a gallery's screen. */
export const UNUSED_ms = { gallery: 30 * MINUTE_ms, elsewhere: 120 * MINUTE_ms } as const;
/** More people than any museum's desk has; the oldest goes. */
const MOST_SESSIONS = 100;
/** A clock set back by more than this ends what was begun "later": it would otherwise last too long. */
const CLOCK_SLACK_ms = 5 * MINUTE_ms;
/** Being used is written down no more often than this. */
const WRITE_EVERY_ms = MINUTE_ms;

export interface Sessions {
	/** Begins one and gives its token, 256 random bits: the only copy. */
	begin(what: Pick<Session, 'kind' | 'gallery' | 'under'>): string;
	/** The session of a token, if it has not ended; looking does not count as use. */
	find(token: string | undefined): Session | null;
	/** Somebody is at work. */
	use(session: Session): void;
	end(session: Session): void;
	/** What is left of it, ms: until it ends for not being used, and at the latest. */
	left(session: Session): { unused_ms: number; all_ms: number };
	/** all has been written */
	written(): Promise<void>;
}

/** Sessions, kept in a file so that a restart of the server ends none. Only hashes of tokens are kept. */
export function createSessions({
	file,
	logger,
	now = Date.now,
}: {
	file: string;
	logger: Logger;
	now?: () => number;
}): Sessions {
	const all = new Map(load(file).map((one) => [one.id, one]));
	let writing: Promise<void> = Promise.resolve();
	let written_ms = -Infinity;
	let warned = false;

	const left = ({ kind, gallery, begun_ms, used_ms }: Session) => {
		const all_ms = begun_ms + ENDS_AFTER_ms[kind] - now();
		const unused_ms = used_ms + UNUSED_ms[gallery ? 'gallery' : 'elsewhere'] - now();
		return { unused_ms: Math.min(unused_ms, all_ms), all_ms };
	};
	const over = (one: Session) => left(one).unused_ms <= 0 || one.used_ms > now() + CLOCK_SLACK_ms;
	const write = () => {
		for (const one of all.values()) if (over(one)) all.delete(one.id);
		while (all.size > MOST_SESSIONS) all.delete(all.keys().next().value!);
		written_ms = now();
		const text = JSON.stringify([...all.values()]);
		writing = writing
			.then(() => writeAtomically(file, text, undefined, 0o600))
			.catch((problem: unknown) => {
				if (!warned) logger.warn(`Staff sessions are not kept over a restart: ${String(problem)}`);
				warned = true;
			});
	};

	return {
		begin(what) {
			const token = randomBytes(32).toString('base64url');
			const id = hashOf(token);
			all.set(id, { id, ...what, begun_ms: now(), used_ms: now() });
			write();
			return token;
		},
		find(token) {
			const one = token ? all.get(hashOf(token)) : undefined;
			return one && !over(one) ? one : null;
		},
		use(one) {
			one.used_ms = now();
			if (now() - written_ms >= WRITE_EVERY_ms || now() < written_ms) write();
		},
		end(one) {
			all.delete(one.id);
			write();
		},
		left,
		written: () => writing,
	};
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('base64url');

function load(file: string): Session[] {
	try {
		return z.array(session).parse(JSON.parse(readFileSync(file, 'utf8')));
	} catch {
		return []; // none yet, or not readable: staff sign in again
	}
}
