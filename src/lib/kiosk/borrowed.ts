import type { Direction } from '../content/textDirection';
import type { Borrowed } from './text.svelte';

/** The borrowed words of a page: those of the content, and those that the screen fills in as it goes. */
export class BorrowedOnScreen implements Borrowed {
	readonly lang: string;
	readonly dir: Direction;
	#keys: ReadonlySet<string>;
	#words: Set<string>;

	constructor(
		{ lang, keys, words }: { lang: string; keys: readonly string[]; words: readonly string[] },
		dir: Direction,
	) {
		this.lang = lang;
		this.dir = dir;
		this.#keys = new Set(keys);
		this.#words = new Set(words.map(plain));
	}

	has(key: string): boolean {
		return this.#keys.has(key);
	}

	said(words: string): void {
		this.#words.add(plain(words));
	}

	/** Whether a text on the page is one of them. */
	is(text: string): boolean {
		const bare = plain(text);
		// a figure or a sign is nobody's language
		return /\p{L}/u.test(bare) && this.#words.has(bare);
	}
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();
