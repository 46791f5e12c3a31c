/** Why staff were not let in, or a secret not set; worded under `desk_enter_why_<code>` and `staff_why_<code>`. */
export type StaffFault =
	| 'wrong'
	/** too many wrong tries: wait */
	| 'wait'
	/** no passphrase or PIN is set yet */
	| 'unset'
	/** there is one already */
	| 'already'
	/** only at the machine itself */
	| 'not-here'
	/** staff.json cannot be read */
	| 'damaged'
	| 'not-written'
	| 'not-understood'
	| 'short'
	| 'long'
	| 'easy'
	| 'digits';

export type StaffAnswer = { ok: true } | { ok: false; code: StaffFault; wait_s?: number };

/** What a page of staff knows of its session. */
export interface SessionNews {
	kind: 'desk' | 'corner';
	/** goes with every request that changes something */
	token: string;
	/** seconds until it ends because nobody has touched anything, and at the latest */
	unused_s: number;
	all_s: number;
}

/** What the staff corner of a gallery's screen is told when it opens. */
export interface CornerNews {
	/** `staff_` words in the screen's language; no visitor's page carries them */
	words: Record<string, string>;
	hasPin: boolean;
	/** seconds until a PIN may be tried again */
	wait_s: number;
}
