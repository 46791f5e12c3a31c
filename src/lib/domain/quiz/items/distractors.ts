import { discriminationOf } from './groups';

/** Under this share of answers a wrong option does not work (Tarrant, Ware & Mohammed 2009, BMC Med. Educ. 9:40). */
export const FUNCTIONING = 0.05;

/** How often an option was taken: by all, by the upper and by the lower group. */
export interface OptionCount {
	option: string;
	right: boolean;
	all: number;
	upper: number;
	lower: number;
}

export interface OptionReading {
	option: string;
	right: boolean;
	/** share of all answers */
	share: number;
	/** negative is as it should be for a wrong option */
	discrimination: number | null;
	/** of wrong options: whether at least one in twenty takes it */
	functioning: boolean;
}

/** What the counts say of each option; `size` = takers in each group. Empty without answers. */
export function distractors(counts: readonly OptionCount[], size: number): OptionReading[] {
	const all = counts.reduce((sum, one) => sum + one.all, 0);
	if (all === 0) return [];
	return counts.map(({ option, right, all: taken, upper, lower }) => ({
		option,
		right,
		share: taken / all,
		discrimination: discriminationOf(upper, lower, size),
		functioning: right || taken / all >= FUNCTIONING,
	}));
}
