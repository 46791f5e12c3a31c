import { createContext } from 'svelte';

export type Values = Readonly<Record<string, string | number>>;

/** Fills an ICU message; loaded only by rooms that need it, so that the start screen stays small. */
export type Formatter = (lang: string, message: string, values: Values) => string;

/** The words of the screen in the language now chosen. Reading it in a template keeps it up to date. */
export class ScreenText {
	#lang: () => string;
	#messages: () => Readonly<Record<string, string>>;
	#format: Formatter | null = null;

	constructor(lang: () => string, messages: () => Readonly<Record<string, string>>) {
		this.#lang = lang;
		this.#messages = messages;
	}

	get lang(): string {
		return this.#lang();
	}

	/** Lets messages with {values} be used from here on. */
	useFormatter(format: Formatter): void {
		this.#format = format;
	}

	has(key: string): boolean {
		return key in this.#messages();
	}

	/** The message under `key`; a key that no language has shows as itself, so that it is noticed. */
	say(key: string, values?: Values): string {
		const message = this.#messages()[key];
		if (message === undefined) return key;
		if (!values) return message;
		if (!this.#format) throw new Error(`ScreenText.say: "${key}" has values, but no formatter was given`);
		return this.#format(this.#lang(), message, values);
	}

	/** A number in the language's own notation. */
	number(value: number, decimals: number): string {
		return new Intl.NumberFormat(this.#lang(), {
			minimumFractionDigits: decimals,
			maximumFractionDigits: decimals,
		}).format(value);
	}

	/** Several things in a row, with the language's own word before the last. */
	list(items: readonly string[]): string {
		return new Intl.ListFormat(this.#lang(), { type: 'conjunction' }).format(items);
	}

	/** Address of a page of ours in the language now chosen. */
	href(path: string): string {
		return `${path}${path.includes('?') ? '&' : '?'}lang=${this.#lang()}`;
	}
}

export const [getScreenText, setScreenText] = createContext<ScreenText>();
