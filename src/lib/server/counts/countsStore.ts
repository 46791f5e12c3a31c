/**
 * Anonymous counts: how often something happened on a day, and nothing else. No person, no device, no time of day, no
 * free text ever reaches a store; `facts` hold ids of the exhibit and small whole numbers only.
 */
export type CountFacts = Readonly<Record<string, string | number | boolean>>;

/** Kinds of what is counted; each has its own facts. */
export const COUNT_KINDS = [
	'quiz-answer',
	'quiz-taker',
	'quiz-round',
	'use-room',
	'use-tooth',
	'use-left',
	'use-language',
	'use-setting',
] as const;
export type CountKind = (typeof COUNT_KINDS)[number];

export interface Tally {
	kind: CountKind;
	/** YYYY-MM-DD in the server's time zone */
	day: string;
	facts: CountFacts;
	count: number;
}

export interface CountsStore {
	/** where they are kept, in words for the terminal; no password in it */
	readonly where: string;
	readonly kind: 'sqlite' | 'postgresql';
	/** the last call was refused because the database does not answer */
	readonly away: boolean;
	/**
	 * Adds one to each of the entries, all or none. When it resolves they are on the disk. A batch sent again under the
	 * same name (an answer that got lost on its way) is counted once; `false` says so.
	 */
	add(batch: string, day: string, entries: readonly Pick<Tally, 'kind' | 'facts'>[]): Promise<boolean>;
	/** Tallies of a kind from a day on, in the order of days and facts. */
	tallies(kind: CountKind, fromDay?: string): Promise<Tally[]>;
	/** Forgets everything before a day; gives how many tallies went. */
	forgetBefore(day: string): Promise<number>;
	close(): Promise<void>;
}

/** Facts as they are kept: keys in order, so that equal facts are one tally. */
export function factsKey(facts: CountFacts): string {
	return JSON.stringify(
		Object.keys(facts)
			.sort()
			.map((key) => [key, facts[key]]),
	);
}

export function readFactsKey(key: string): CountFacts {
	return Object.fromEntries(JSON.parse(key) as [string, string | number | boolean][]);
}
