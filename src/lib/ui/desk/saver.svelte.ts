import type { SaveAnswer, SaveTrouble } from '../../content/deskAnswers';
import type { Clash, FileChange, WhatWasDone } from '../../content/deskFiles';
import { deskPost } from './deskPost';

type Saved = Extract<SaveAnswer, { ok: true }>['saved'];

export type SaveState =
	| { is: 'idle' }
	| { is: 'sending' }
	/** `undone`: what was saved is an earlier version brought back */
	| { is: 'saved'; saved: Saved; undone: boolean }
	| { is: 'clash'; clashes: Clash[] }
	| { is: 'errors'; failure: Extract<SaveTrouble, { code: 'has-errors' }> }
	| { is: 'failed'; failure: Exclude<SaveTrouble, { code: 'has-errors' | 'changed-underneath' }> }
	| { is: 'unsent'; why: 'signed-out' | 'no-answer' | 'refused' };

/** One save after another, and how the last one went. */
export class Saver {
	state = $state.raw<SaveState>({ is: 'idle' });
	readonly #lang: () => string;
	readonly #what: () => WhatWasDone;
	#last: { changes: FileChange[] } | null = null;

	/** `lang`: of the page, for the words of problems */
	constructor(lang: () => string, what: () => WhatWasDone) {
		this.#lang = lang;
		this.#what = what;
	}

	get busy(): boolean {
		return this.state.is === 'sending';
	}

	/** What was typed since makes old news of the last answer; a clash stays until it is settled. */
	typed(): void {
		if (this.state.is !== 'clash' && this.state.is !== 'sending') this.state = { is: 'idle' };
	}

	/** What was saved; null where nothing was. */
	async save(changes: FileChange[], evenIfBroken = false): Promise<Saved | null> {
		this.#last = { changes };
		return this.#send('/desk/save', { changes, evenIfBroken, what: this.#what() }, false);
	}

	/** The same once more, whatever the check says. */
	async saveAnyway(): Promise<Saved | null> {
		return this.#last ? this.save(this.#last.changes, true) : null;
	}

	/** Brings an earlier version back. */
	async restore(request: RestoreAsk): Promise<Saved | null> {
		return this.#send('/desk/restore', request, true);
	}

	async #send(path: string, body: unknown, undone: boolean): Promise<Saved | null> {
		this.state = { is: 'sending' };
		const posted = await deskPost<SaveAnswer>(`${path}?lang=${this.#lang()}`, body);
		if (!posted.ok) {
			this.state = { is: 'unsent', why: posted.why };
			return null;
		}
		const answer = posted.value;
		if (answer.ok) {
			this.state = { is: 'saved', saved: answer.saved, undone };
			return answer.saved;
		}
		const { failure } = answer;
		if (failure.code === 'changed-underneath') this.state = { is: 'clash', clashes: failure.clashes };
		else if (failure.code === 'has-errors') this.state = { is: 'errors', failure };
		else this.state = { is: 'failed', failure };
		return null;
	}
}

export interface RestoreAsk {
	versionId: string;
	/** only this file; all files of the version where it is left out */
	path?: string;
	/** before: undoes the version; after: brings back what it left */
	side: 'before' | 'after';
	/** the files of that version, or the whole folder as it then was */
	scope: 'version' | 'folder';
	evenIfBroken?: boolean;
}
