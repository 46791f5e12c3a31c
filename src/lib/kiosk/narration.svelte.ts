import { createContext } from 'svelte';

/** Something that sounds now. */
export interface Sounding {
	stop(): void;
	/** factor on the amplitude, 0 .. 1, where it can still be changed */
	setGain(gain: number): void;
}

/** Reads text with a voice of this machine, or plays a recording; `onEnd` is called once, unless stopped before. */
export interface Mouth {
	/** languages that voices of this machine speak, as BCP 47 tags */
	languages(): readonly string[];
	/** called when the voices have changed; browsers find theirs late */
	onVoices(changed: () => void): () => void;
	say(text: string, language: string, gain: number, onEnd: () => void): Sounding;
	/** `onFail` instead of `onEnd` where the recording cannot be played */
	play(url: string, gain: number, onEnd: () => void, onFail: () => void): Sounding;
}

/** What can be read aloud. */
export interface Telling {
	/** tells one from the other */
	key: string;
	/** the words, as they stand on the screen */
	text: () => string;
	/** language of the words */
	language: string;
	/** a recording of them, null for none */
	soundUrl: string | null;
}

/** One voice in the room: begun by a touch, ended by another, never two at once and never by itself. */
export class Narration {
	/** key of what is being read aloud */
	current = $state<string | null>(null);
	#languages = $state.raw<ReadonlySet<string>>(new Set());
	#mouth: Mouth | null;
	#gain: () => number;
	#sounding: Sounding | null = null;
	/** goes up with each start and stop: an end that comes late knows that it is late */
	#turn = 0;

	/** `mouth` null: nothing can sound (on the server). `gain` is asked at each start. */
	constructor(mouth: Mouth | null, gain: () => number) {
		this.#mouth = mouth;
		this.#gain = gain;
	}

	/** Follows the voices of this machine; returns what ends it and falls silent. */
	listen(): () => void {
		const look = () => {
			this.#languages = new Set(this.#mouth?.languages().map(primary));
		};
		look();
		const forget = this.#mouth?.onVoices(look);
		return () => {
			forget?.();
			this.stop();
		};
	}

	/** Whether there is a recording, or a voice that speaks the language of the words. */
	canTell({ soundUrl, language }: Pick<Telling, 'soundUrl' | 'language'>): boolean {
		return this.#mouth !== null && (soundUrl !== null || this.#languages.has(primary(language)));
	}

	/** Begins to read from the start, or stops what is being read if it is this. */
	toggle(telling: Telling): void {
		const same = this.current === telling.key;
		this.stop();
		if (same || !this.#mouth || !this.canTell(telling)) return;
		if (telling.soundUrl === null) this.#say(telling);
		else this.#play(telling, telling.soundUrl);
	}

	stop(): void {
		this.#turn += 1;
		this.#sounding?.stop();
		this.#sounding = null;
		this.current = null;
	}

	/** The loudness has changed. */
	setGain(gain: number): void {
		if (gain === 0) this.stop();
		else this.#sounding?.setGain(gain);
	}

	#say({ key, text, language }: Telling): void {
		const turn = this.#begin(key);
		this.#sounding = this.#mouth!.say(text(), language, this.#gain(), () => this.#end(turn));
	}

	#play(telling: Telling, url: string): void {
		const turn = this.#begin(telling.key);
		const fail = () => {
			if (turn !== this.#turn) return;
			this.stop();
			if (this.#languages.has(primary(telling.language))) this.#say(telling);
		};
		this.#sounding = this.#mouth!.play(url, this.#gain(), () => this.#end(turn), fail);
	}

	#begin(key: string): number {
		this.#turn += 1;
		this.current = key;
		return this.#turn;
	}

	#end(turn: number): void {
		if (turn === this.#turn) this.stop();
	}
}

/** `fr-CA` -> `fr` */
const primary = (language: string): string => language.toLowerCase().split(/[-_]/)[0];

export const [getNarration, setNarration] = createContext<Narration>();
