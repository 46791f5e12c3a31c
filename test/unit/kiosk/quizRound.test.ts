import { beforeEach, describe, expect, it } from 'vitest';
import { PAUSE_MS, THINK_MS } from '../../../src/lib/domain/quiz/flow';
import type { QuizGround } from '../../../src/lib/domain/quiz/buildRound';
import { readRoundCode, roundCode } from '../../../src/lib/domain/quiz/roundCode';
import { seeded } from '../../../src/lib/domain/quiz/seeded';
import { QuizRound, ROUND_KEY, stillAsked, type RoundCounts } from '../../../src/lib/kiosk/quizRound.svelte';
import { randomGround } from '../quiz/randomGround';

const claims: QuizGround['claims'] = [
	{ id: 'line-a-day', verdict: 'holds', bands: ['7-11'], topic: 'lines', tooth: null },
];
const ground: QuizGround = { ...randomGround(16, seeded('round')), claims };
const CODE = roundCode({ band: '7-11', length: 10, seed: 77 });

class Memory {
	kept = new Map<string, string>();
	getItem = (key: string) => this.kept.get(key) ?? null;
	setItem = (key: string, value: string) => void this.kept.set(key, value);
	removeItem = (key: string) => void this.kept.delete(key);
}

let memory: Memory;
let now: number;
let told: RoundCounts[];
const tools = () => ({ memory, now: () => now, count: (counts: RoundCounts) => void told.push(counts) });
const begin = (teams = 2) =>
	new QuizRound(ground, 'g', { code: CODE, plan: readRoundCode(CODE)!, teams }, tools());
beforeEach(() => {
	memory = new Memory();
	now = 1_000_000;
	told = [];
});

/** Answers the question on the screen, by every team that is asked, and goes on. */
function play(round: QuizRound, right: boolean, next = true): void {
	now += THINK_MS;
	round.act({ kind: 'tick' });
	const question = round.question!;
	for (let team = 0; team < round.state.teams; team += 1) {
		const order = question.task.kind === 'order' ? [...question.task.right] : [];
		const option = question.options.find((one) => one.right === right) ?? question.options[0];
		round.act({
			kind: 'answer',
			team,
			response:
				question.task.kind === 'order'
					? { kind: 'order', teeth: right ? order : order.reverse() }
					: { kind: 'option', option: option.id },
		});
	}
	round.act({ kind: 'lock' });
	now += PAUSE_MS;
	round.act({ kind: 'tick' });
	expect(round.state.phase).toBe('reveal');
	if (next) round.act({ kind: 'next' });
}

describe('QuizRound', () => {
	it('goes on after a reload where it stood, with the same questions and answers', () => {
		const before = begin();
		play(before, true);
		now += THINK_MS;
		before.act({ kind: 'tick' });
		const option = before.question!.options[1].id;
		const team = before.state.turn;
		before.act({ kind: 'answer', team, response: { kind: 'option', option } });
		const kept = QuizRound.kept(memory, ground)!;
		const after = new QuizRound(ground, 'g', kept, tools());
		expect(after.questions).toEqual(before.questions);
		expect({ ...after.state, since_ms: 0 }).toEqual({ ...before.state, since_ms: 0 });
		expect(after.state.at).toBe(1);
		play(after, true);
		expect(after.state.at).toBe(2);
	});

	it('goes on after an edit of the exhibit, unless a tooth is gone or what is right has changed', () => {
		const before = begin();
		play(before, true);
		const more = { ...ground, teeth: [...ground.teeth, { ...ground.teeth[0], id: 'skm-9999' }] };
		const kept = QuizRound.kept(memory, more)!;
		expect(new QuizRound(more, 'h', kept, tools()).questions).toEqual(before.questions);
		expect(before.follow(more)).toBe(true);

		const needed = before.questions.find(({ teeth }) => teeth.length > 0)!.teeth[0];
		const less = { ...ground, teeth: ground.teeth.filter(({ id }) => id !== needed) };
		expect(QuizRound.kept(memory, less)).toBeNull();
		expect(before.follow(less)).toBe(false);

		const claim = {
			id: 'claim-line-a-day',
			kind: 'claim',
			teeth: [],
			options: [{ id: 'holds', right: true }],
		};
		const asked = [claim] as unknown as Parameters<typeof stillAsked>[0];
		expect(stillAsked(asked, ground)).toBe(true);
		expect(stillAsked(asked, { ...ground, claims: [{ ...claims[0], verdict: 'wrong' }] })).toBe(false);
		expect(stillAsked(asked, { ...ground, claims: [] })).toBe(false);
	});

	it('what is not a round, or one that has ended, is not taken up', () => {
		expect(QuizRound.kept(null, ground)).toBeNull();
		for (const junk of ['', '{', 'null', '7', '{"state":{}}', '{"state":{"code":"000000"},"questions":[]}']) {
			memory.setItem(ROUND_KEY, junk);
			expect(QuizRound.kept(memory, ground), junk).toBeNull();
		}
		begin();
		const whole = JSON.parse(memory.getItem(ROUND_KEY)!) as { state: { at: number }; questions: unknown[] };
		whole.state.at = 10;
		memory.setItem(ROUND_KEY, JSON.stringify(whole));
		expect(QuizRound.kept(memory, ground)).toBeNull();
	});

	it('tells each answer once, and at the end of a whole round each total once', () => {
		const round = begin(3);
		const answers = () => told.reduce((sum, one) => sum + one.answers.length, 0);
		let expected = 0;
		for (let at = 0; at < 10; at += 1) {
			play(round, at % 2 === 0, false);
			expected += round.state.results[at].teams.filter(({ judgement }) => judgement).length;
			expect(answers()).toBe(expected);
			// a reload in the middle of the telling tells nothing again
			const kept = QuizRound.kept(memory, ground)!;
			new QuizRound(ground, 'g', kept, tools()).act({ kind: 'tick' });
			round.act({ kind: 'lock' });
			expect(answers()).toBe(expected);
			round.act({ kind: 'next' });
		}
		expect(round.state.phase).toBe('done');
		const ends = told.filter(({ rounds }) => rounds.length > 0);
		expect(ends).toHaveLength(1);
		expect(ends[0].rounds).toHaveLength(3);
		expect(ends[0].takers).toHaveLength(expected);
		for (const { round: code } of ends[0].rounds) expect(code).toBe(CODE);
		round.act({ kind: 'next' });
		round.act({ kind: 'end' });
		expect(told.filter(({ rounds }) => rounds.length > 0)).toHaveLength(1);
	});

	it('a round that is ended early and a skipped question tell nothing more', () => {
		const round = begin();
		round.act({ kind: 'skip' });
		expect(told).toEqual([]);
		play(round, true);
		const before = told.length;
		round.act({ kind: 'end' });
		expect(told).toHaveLength(before);
		expect(told.every(({ rounds, takers }) => rounds.length + takers.length === 0)).toBe(true);
	});

	it('forgets: nothing is left when it is over or left, and what is kept is about nobody', () => {
		const round = begin();
		play(round, true);
		const text = memory.getItem(ROUND_KEY)!;
		expect([...memory.kept.keys()]).toEqual([ROUND_KEY]);
		expect(Object.keys(JSON.parse(text) as object).sort()).toEqual(['questions', 'state']);
		expect(Object.keys((JSON.parse(text) as { state: object }).state).sort()).toEqual(
			// prettier-ignore
			['answers', 'at', 'code', 'ground', 'hints', 'phase', 'questions', 'results', 'since_ms', 'teams', 'turn'],
		);
		round.forget();
		expect(memory.kept.size).toBe(0);
		const other = begin();
		other.act({ kind: 'end' });
		expect(memory.kept.size).toBe(0);
	});

	it('goes on without a memory, or with one that refuses', () => {
		const refuses = {
			getItem: () => null,
			setItem: () => {
				throw new Error('full');
			},
			removeItem: () => {
				throw new Error('forbidden');
			},
		};
		const plan = readRoundCode(CODE)!;
		for (const none of [null, refuses]) {
			const round = new QuizRound(ground, 'g', { code: CODE, plan, teams: 1 }, { ...tools(), memory: none });
			play(round, true);
			expect(round.state.at).toBe(1);
			round.forget();
		}
	});
});
