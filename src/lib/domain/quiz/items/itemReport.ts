import { chanceCorrected, difficulty, wilson } from './difficulty';
import { distractors, type OptionReading } from './distractors';
import { groupSize, reading } from './groups';

/** A question that was answered `count` times in this way. */
export interface AnswerCount {
	question: string;
	option: string;
	right: boolean;
	hinted: boolean;
	count: number;
}

/** The same at the end of a round, beside how many of `of` questions that team had right in all. */
export interface TakerCount {
	question: string;
	option: string;
	right: boolean;
	total: number;
	of: number;
	count: number;
}

/** Fewer answers than this say nothing. */
export const FEWEST_ANSWERS = 10;

export type Advice =
	'too-few' | 'check-key' | 'too-easy' | 'too-hard' | 'poor' | 'revise' | 'idle-option' | 'fine';

export interface ItemReport {
	question: string;
	answers: number;
	right: number;
	/** share right and its 95 % interval; null with too few answers */
	p: number | null;
	interval: { low: number; high: number } | null;
	/** share right beyond guessing */
	beyondChance: number | null;
	/** null where too few rounds were played to their end, or r is undefined */
	d: number | null;
	r: number | null;
	hinted: number;
	options: OptionReading[];
	advice: Advice[];
}

/**
 * What the counts say of each question, those with most answers first. A team's answer is one answer, never a class of
 * pupils. D and r rest on the shares right of whole rounds, with the question itself left out (LeBlanc & Cox 2017), so
 * that rounds of different lengths can stand together.
 * Limits of the advice: p .30 to .90 and Ebel's D (groups.ts); fewer than ten answers say nothing.
 */
export function itemReport(answers: readonly AnswerCount[], takers: readonly TakerCount[]): ItemReport[] {
	const questions = [...new Set(answers.map(({ question }) => question))].sort();
	return questions
		.map((question) =>
			report(
				question,
				answers.filter((one) => one.question === question),
				takers.filter((one) => one.question === question),
			),
		)
		.sort((a, b) => b.answers - a.answers);
}

function report(
	question: string,
	answers: readonly AnswerCount[],
	takers: readonly TakerCount[],
): ItemReport {
	const sum = (of: readonly { count: number }[]): number => of.reduce((total, { count }) => total + count, 0);
	const n = sum(answers);
	const right = sum(answers.filter((one) => one.right));
	const enough = n >= FEWEST_ANSWERS;
	const p = enough ? difficulty(right, n) : null;
	const options = [...new Set(answers.map(({ option }) => option))].sort();
	const people = weighted(takers);
	const groups = cut(people);
	const read = distractors(
		options.map((option) => {
			const own = answers.filter((one) => one.option === option);
			return {
				option,
				right: own.some((one) => one.right),
				all: sum(own),
				upper: groups.weightOf(option, 'upper'),
				lower: groups.weightOf(option, 'lower'),
			};
		}),
		groups.size,
	);
	const d = enough ? (read.find((one) => one.right)?.discrimination ?? null) : null;
	return {
		question,
		answers: n,
		right,
		p,
		interval: enough ? wilson(right, n) : null,
		beyondChance: p === null || options.length < 2 ? null : chanceCorrected(p, Math.max(3, options.length)),
		d,
		r: enough ? correlation(people) : null,
		hinted: sum(answers.filter(({ hinted }) => hinted)),
		options: read,
		advice: advise(enough, p, d, read),
	};
}

interface Weighted {
	right: boolean;
	option: string;
	/** share right of the other questions of the round */
	rest: number;
	count: number;
}

function weighted(takers: readonly TakerCount[]): Weighted[] {
	return takers
		.filter(({ of }) => of > 1)
		.map(({ right, option, total, of, count }) => ({
			right,
			option,
			rest: (total - (right ? 1 : 0)) / (of - 1),
			count,
		}));
}

/** Upper and lower 27 %; those who tie at a cut share the places that are left. */
function cut(people: readonly Weighted[]): {
	size: number;
	weightOf: (option: string, group: 'upper' | 'lower') => number;
} {
	const n = people.reduce((sum, { count }) => sum + count, 0);
	const size = n >= FEWEST_ANSWERS ? groupSize(n) : 0;
	const share = (sign: 1 | -1): Map<number, number> => {
		const levels = [...new Set(people.map(({ rest }) => rest))].sort((a, b) => sign * (b - a));
		const result = new Map<number, number>();
		let left = size;
		for (const level of levels) {
			const here = people.filter(({ rest }) => rest === level).reduce((sum, { count }) => sum + count, 0);
			result.set(level, Math.min(1, left / here));
			left = Math.max(0, left - here);
		}
		return result;
	};
	const shares = { upper: share(1), lower: share(-1) };
	return {
		size,
		weightOf: (option, group) =>
			people
				.filter((one) => one.option === option)
				.reduce((sum, { rest, count }) => sum + count * (shares[group].get(rest) ?? 0), 0),
	};
}

/** Pearson's r of right or wrong with the rest of the round; null where undefined. */
function correlation(people: readonly Weighted[]): number | null {
	const n = people.reduce((sum, { count }) => sum + count, 0);
	if (n < FEWEST_ANSWERS) return null;
	const mean = (of: (one: Weighted) => number): number =>
		people.reduce((sum, one) => sum + one.count * of(one), 0) / n;
	const x = mean(({ right }) => (right ? 1 : 0));
	const y = mean(({ rest }) => rest);
	const xy = mean(({ right, rest }) => ((right ? 1 : 0) - x) * (rest - y));
	const [xx, yy] = [x * (1 - x), mean(({ rest }) => (rest - y) ** 2)];
	return xx < 1e-12 || yy < 1e-12 ? null : xy / Math.sqrt(xx * yy);
}

function advise(
	enough: boolean,
	p: number | null,
	d: number | null,
	options: readonly OptionReading[],
): Advice[] {
	if (!enough || p === null) return ['too-few'];
	const advice: Advice[] = [];
	const told = d === null ? null : reading(d);
	if (told === 'check-key') advice.push('check-key');
	if (p > 0.9) advice.push('too-easy');
	if (p < 0.3) advice.push('too-hard');
	// a question that nearly all or nearly none get right cannot tell anybody apart: that is said already
	if (p <= 0.9 && p >= 0.3 && (told === 'poor' || told === 'revise')) advice.push(told);
	if (options.some(({ functioning }) => !functioning)) advice.push('idle-option');
	return advice.length > 0 ? advice : ['fine'];
}
