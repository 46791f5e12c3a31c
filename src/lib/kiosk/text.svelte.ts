import { createContext } from 'svelte';
import type { Direction } from '../content/textDirection';
import { isolateFromLeft } from './isolate';
import { roomAddress } from './roomAddress';

export type Values = Readonly<Record<string, string | number>>;

/**
 * Fills an ICU message; loaded only by rooms that need it, so that the start screen stays small. With `isolate`, texts
 * that are filled in keep their own direction (Unicode isolates), as a Latin name in an Arabic line.
 */
export type Formatter = (lang: string, message: string, values: Values, isolate?: boolean) => string;

/** Words that the chosen language lacks and that are said in another one. */
export interface Borrowed {
	/** the language that they are in */
	lang: string;
	/** whether the message under a key is one of them */
	has(key: string): boolean;
	/** told of each such message once its values are filled in */
	said(words: string): void;
}

/** The words of the screen in the language now chosen. Reading it in a template keeps it up to date. */
export class ScreenText {
	#lang: () => string;
	#messages: () => Readonly<Record<string, string>>;
	#dir: () => Direction;
	#borrowed: () => Borrowed | undefined;
	/** what addresses carry on beside the language, with a leading & */
	#kept: () => string;
	#format: Formatter | null = null;
	#address: (path: string, lang: string) => string;

	constructor(
		lang: () => string,
		messages: () => Readonly<Record<string, string>>,
		dir: () => Direction = () => 'ltr',
		borrowed: () => Borrowed | undefined = () => undefined,
		kept: () => string = () => '',
		address: (path: string, lang: string) => string = (path, code) => roomAddress(path, code, null),
	) {
		this.#lang = lang;
		this.#messages = messages;
		this.#dir = dir;
		this.#borrowed = borrowed;
		this.#kept = kept;
		this.#address = address;
	}

	get lang(): string {
		return this.#lang();
	}

	/** Which way lines run. */
	get dir(): Direction {
		return this.#dir();
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
		const lender = this.#borrowed();
		const borrowed = lender?.has(key) ? lender : null;
		const lang = borrowed?.lang ?? this.#lang();
		const said = this.#format(lang, message, values, this.#dir() === 'rtl');
		borrowed?.said(said);
		return said;
	}

	/** A number in the language's own notation. */
	number(value: number, decimals: number): string {
		return new Intl.NumberFormat(this.#lang(), {
			minimumFractionDigits: decimals,
			maximumFractionDigits: decimals,
		}).format(value);
	}

	/** A number with the sign of its unit, which keeps its place behind the number whichever way lines run. */
	amount(value: number, decimals: number, unit: string, gap = ' '): string {
		const shown = `${this.number(value, decimals)}${gap}${unit}`;
		return this.#dir() === 'rtl' ? isolateFromLeft(shown) : shown;
	}

	/** Several things in a row, with the language's own word before the last. */
	list(items: readonly string[]): string {
		return new Intl.ListFormat(this.#lang(), { type: 'conjunction' }).format(items);
	}

	/** Address of a page of ours in the language now chosen. */
	href(path: string): string {
		return this.hrefIn(this.#lang(), path);
	}

	/** The same in another language. */
	hrefIn(lang: string, path: string): string {
		const address = this.#address(path, lang);
		const kept = this.#kept();
		return kept && !address.includes('?') ? `${address}?${kept.slice(1)}` : address + kept;
	}
}

export const [getScreenText, setScreenText] = createContext<ScreenText>();
