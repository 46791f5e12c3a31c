import { buildRound, type QuizGround } from '../domain/quiz/buildRound';
import { afterEvent, startRound, type RoundEvent, type RoundState } from '../domain/quiz/flow';
import type { Question, QuizTooth } from '../domain/quiz/question';
import { readRoundCode, type RoundPlan } from '../domain/quiz/roundCode';
import { teamMarks } from '../domain/quiz/summary';

/** Where a round is kept for the length of a visit, so that a page that was reloaded goes on. */
export interface RoundMemory {
	getItem(key: string): string | null;
	setItem(key: string, value: string): void;
	removeItem(key: string): void;
}

/** What is told for counting; nothing in it is about a person. */
export interface RoundCounts {
	answers: { question: string; option: string; right: boolean; hinted: boolean; band: string }[];
	takers: { question: string; option: string; right: boolean; total: number; of: number }[];
	rounds: { round: string; total: number; of: number }[];
}

/** The round on the screen is kept under this name, for the length of a visit. */
export const ROUND_KEY = 'tooth-table.round';

/** What is kept: where the round stands, and its questions, so that an edit of the exhibit does not take them away. */
export interface KeptRound {
	state: RoundState;
	questions: Question[];
}

/**
 * Whether the questions of a round may still be asked: all their teeth are there, and what a curator wrote still says
 * the same is right.
 */
export function stillAsked(questions: readonly Question[], ground: QuizGround): boolean {
	const teeth = new Set(ground.teeth.map(({ id }) => id));
	const right = new Map<string, string>([
		...ground.claims.map(({ id, verdict }) => [`claim-${id}`, verdict] as const),
		...ground.own.map((own) => [`own-${own.id}`, own.right] as const),
	]);
	return questions.every(({ id, kind, teeth: shown, options }) => {
		if (shown.some((tooth) => !teeth.has(tooth))) return false;
		if (kind !== 'claim' && !id.startsWith('own-')) return true;
		return options.find((option) => option.right)?.id === right.get(id);
	});
}

/** One round on the screen: its questions, where it stands, and what happens next. */
export class QuizRound {
	state = $state.raw<RoundState>() as RoundState;
	readonly plan: RoundPlan;
	readonly questions: readonly Question[];
	#teeth: ReadonlyMap<string, QuizTooth>;
	#memory: RoundMemory | null;
	#now: () => number;
	#count: (counts: RoundCounts) => void;

	constructor(
		ground: QuizGround,
		groundHash: string,
		start: { code: string; plan: RoundPlan; teams: number } | KeptRound,
		tools: { memory: RoundMemory | null; now: () => number; count: (counts: RoundCounts) => void },
	) {
		const plan = 'plan' in start ? start.plan : readRoundCode(start.state.code);
		if (!plan) throw new Error('QuizRound: no round has this code');
		this.plan = plan;
		this.#memory = tools.memory;
		this.#now = tools.now;
		this.#count = tools.count;
		this.#teeth = new Map(ground.teeth.map((tooth) => [tooth.id, tooth]));
		if ('plan' in start) {
			this.questions = buildRound(ground, plan.band, plan.length, plan.seed);
			this.state = startRound(start.code, groundHash, start.teams, this.questions.length, tools.now());
		} else {
			this.questions = start.questions;
			this.state = { ...start.state, since_ms: tools.now() };
		}
		this.#keep();
	}

	/** The round that was going on before the page was reloaded; null when there is none, or it cannot go on. */
	static kept(memory: RoundMemory | null, ground: QuizGround): KeptRound | null {
		try {
			const kept = JSON.parse(memory?.getItem(ROUND_KEY) ?? 'null') as KeptRound | null;
			if (!kept || !readRoundCode(kept.state.code) || kept.state.phase === 'done') return null;
			if (kept.questions.length !== kept.state.questions || !kept.questions[kept.state.at]) return null;
			return stillAsked(kept.questions, ground) ? kept : null;
		} catch {
			return null;
		}
	}

	/** Whether the round can go on with the exhibit as it is now; teeth as they are now judge what is touched. */
	follow(ground: QuizGround): boolean {
		this.#teeth = new Map(ground.teeth.map((tooth) => [tooth.id, tooth]));
		return stillAsked(this.questions, ground);
	}

	/** The question on the screen; none in a round without questions. */
	get question(): Question | undefined {
		return this.questions[Math.min(this.state.at, this.questions.length - 1)];
	}

	act(event: RoundEvent): void {
		const { question } = this;
		if (!question) return;
		const before = this.state;
		const after = afterEvent(before, event, question, this.#now(), this.#teeth.get(question.teeth[0]));
		if (after === before) return;
		this.state = after;
		if (after.results.length > before.results.length) this.#tellAnswers();
		if (after.phase === 'done' && event.kind !== 'end') this.#tellRound();
		this.#keep();
	}

	/** Forgets everything about the round. */
	forget(): void {
		try {
			this.#memory?.removeItem(ROUND_KEY);
		} catch {
			// a forbidden store holds nothing either
		}
	}

	#keep(): void {
		try {
			if (this.state.phase === 'done') this.#memory?.removeItem(ROUND_KEY);
			else this.#memory?.setItem(ROUND_KEY, JSON.stringify(this.#whole()));
		} catch {
			// a full or forbidden store: the round goes on, but not over a reload
		}
	}

	#whole(): KeptRound {
		return { state: this.state, questions: [...this.questions] };
	}

	#tellAnswers(): void {
		const result = this.state.results[this.state.results.length - 1];
		if (result.skipped) return;
		const answers = result.teams.flatMap(({ judgement }) =>
			judgement
				? [
						{
							question: result.question,
							option: judgement.counted,
							right: judgement.right,
							hinted: result.hints > 0,
							band: this.plan.band,
						},
					]
				: [],
		);
		if (answers.length > 0) this.#count({ answers, takers: [], rounds: [] });
	}

	/** At the end of a whole round: each team's total beside its answers. */
	#tellRound(): void {
		const { results, code } = this.state;
		const marks = teamMarks(this.state);
		const takers = marks.flatMap(({ answers: of, right: total }, team) =>
			results.flatMap(({ question, teams }) => {
				const judgement = teams[team]?.judgement;
				return judgement ? [{ question, option: judgement.counted, right: judgement.right, total, of }] : [];
			}),
		);
		const rounds = marks
			.filter(({ answers }) => answers > 0)
			.map(({ answers: of, right: total }) => ({ round: code, total, of }));
		if (takers.length > 0) this.#count({ answers: [], takers, rounds });
	}
}
