import {
	itemReport,
	type AnswerCount,
	type ItemReport,
	type TakerCount,
} from '../../domain/quiz/items/itemReport';
import { roundReliability, type TotalCount } from '../../domain/quiz/items/roundReliability';
import type { CountsStore, Tally } from './countsStore';
import { hideSmall } from './hideSmall';

/** What staff may see of one question: counts under five are hidden (null). */
export interface QuestionReport extends Omit<ItemReport, 'options' | 'answers' | 'right' | 'hinted'> {
	answers: number | null;
	hinted: number | null;
	options: {
		option: string;
		right: boolean;
		count: number | null;
		share: number | null;
		discrimination: number | null;
		functioning: boolean;
	}[];
}

export interface RoundReport {
	round: string;
	takers: number | null;
	/** KR-20; null = too few, or no spread */
	reliability: number | null;
}

export interface QuizReport {
	questions: QuestionReport[];
	rounds: RoundReport[];
	/** first and last day with a count */
	from: string | null;
	to: string | null;
}

/** What the counts say, from a day on. */
export async function quizReport(store: CountsStore, fromDay?: string): Promise<QuizReport> {
	const [answers, takers, rounds] = await Promise.all([
		store.tallies('quiz-answer', fromDay),
		store.tallies('quiz-taker', fromDay),
		store.tallies('quiz-round', fromDay),
	]);
	const answered = added(answers).map(({ facts, count }) => ({ ...facts, count }) as unknown as AnswerCount);
	const taken = added(takers).map(
		({ facts, count }) => ({ ...facts, count }) as unknown as TakerCount & { round?: string },
	);
	const days = answers.map(({ day }) => day);
	return {
		questions: itemReport(answered, taken).map((report) => shown(report, answered)),
		rounds: roundReports(added(rounds), taken),
		from: days[0] ?? null,
		to: days[days.length - 1] ?? null,
	};
}

/** Tallies of the same facts on different days as one. */
function added(tallies: readonly Tally[]): Tally[] {
	const sums = new Map<string, Tally>();
	for (const tally of tallies) {
		const key = JSON.stringify(Object.entries(tally.facts).sort());
		const before = sums.get(key);
		sums.set(key, before ? { ...before, count: before.count + tally.count } : tally);
	}
	return [...sums.values()];
}

function shown(report: ItemReport, answers: readonly AnswerCount[]): QuestionReport {
	const { options, answers: all, right: _right, hinted, ...rest } = report;
	const counts = options.map(({ option }) =>
		answers
			.filter((one) => one.question === report.question && one.option === option)
			.reduce((sum, { count }) => sum + count, 0),
	);
	const visible = hideSmall(counts);
	// a share and a total would give a hidden count back
	const told = options.every(({ right }, i) => !right || visible[i] !== null);
	return {
		...rest,
		p: told ? rest.p : null,
		interval: told ? rest.interval : null,
		beyondChance: told ? rest.beyondChance : null,
		answers: hideSmall([all])[0],
		hinted: hideSmall([hinted])[0],
		options: options.map(({ share, ...option }, i) => ({
			...option,
			count: visible[i],
			share: visible[i] === null ? null : share,
		})),
	};
}

/** Rounds whose takers all answered every question: others cannot be compared. */
function roundReports(
	rounds: readonly Tally[],
	takers: readonly (TakerCount & { round?: string })[],
): RoundReport[] {
	const codes = [...new Set(rounds.map(({ facts }) => String(facts.round)))].sort();
	return codes.map((round) => {
		const totals = rounds
			.filter(({ facts }) => facts.round === round)
			.map(({ facts, count }) => ({ total: Number(facts.total), of: Number(facts.of), count }));
		const most = Math.max(...totals.map(({ of }) => of));
		const whole: TotalCount[] = totals.filter(({ of }) => of === most);
		const own = takers.filter((one) => one.round === round && one.of === most);
		const questions = new Set(own.map(({ question }) => question)).size;
		const n = whole.reduce((sum, { count }) => sum + count, 0);
		return {
			round,
			takers: hideSmall([n])[0],
			reliability: questions === most ? roundReliability(whole, own) : null,
		};
	});
}
