import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildRound } from '../../../src/lib/domain/quiz/buildRound';
import {
	afterEvent,
	askedTeams,
	everyoneAnswered,
	isByHand,
	PAUSE_MS,
	startRound,
	THINK_MS,
	type RoundEvent,
	type RoundState,
} from '../../../src/lib/domain/quiz/flow';
import type { Question, Response } from '../../../src/lib/domain/quiz/question';
import { seeded } from '../../../src/lib/domain/quiz/seeded';
import { summary, teamMarks } from '../../../src/lib/domain/quiz/summary';
import { randomGround } from './randomGround';

const ground = randomGround(16, seeded('flow'));
const round = buildRound(ground, '7-11', 10, 5);
const toothOf = (question: Question) => ground.teeth.find(({ id }) => id === question.teeth[0]);
const step = (state: RoundState, event: RoundEvent, now: number): RoundState => {
	const question = round[state.at];
	return afterEvent(state, event, question, now, toothOf(question));
};
const rightAnswer = (question: Question): Response =>
	question.task.kind === 'order'
		? { kind: 'order', teeth: question.task.right }
		: { kind: 'option', option: question.options.find(({ right }) => right)!.id };

describe('flow', () => {
	it('answers open after three seconds and not before', () => {
		let state = startRound('code', 'g', 2, round.length, 1000);
		state = step(state, { kind: 'tick' }, 1000 + THINK_MS - 1);
		expect(state.phase).toBe('think');
		const early = step(state, { kind: 'answer', team: 0, response: rightAnswer(round[0]) }, 3000);
		expect(early).toBe(state);
		expect(step(state, { kind: 'tick' }, 1000 + THINK_MS).phase).toBe('answer');
	});

	it('four teams play a whole round: turns, a change of mind, lock, reveal, summary', () => {
		let now = 0;
		let state = startRound('123456', 'g', 4, round.length, now);
		const byHand = [0, 0, 0, 0];
		while (state.phase !== 'done') {
			const question = round[state.at];
			state = step(state, { kind: 'tick' }, (now += THINK_MS));
			const asked = askedTeams(state, question);
			if (isByHand(question)) byHand[asked[0]] += 1;
			expect(asked).toHaveLength(isByHand(question) ? 1 : 4);
			for (const team of asked) {
				expect(state.turn).toBe(team);
				expect(step(state, { kind: 'lock' }, now)).toBe(state);
				const first = question.options.find(({ right }) => !right)!;
				if (!isByHand(question))
					state = step(state, { kind: 'answer', team, response: { kind: 'option', option: first.id } }, now);
				// a change of mind
				state = step(state, { kind: 'answer', team, response: rightAnswer(question) }, now);
			}
			expect(everyoneAnswered(state, question)).toBe(true);
			state = step(state, { kind: 'lock' }, now);
			expect(state.phase).toBe('hush');
			expect(step(state, { kind: 'next' }, now)).toBe(state);
			state = step(state, { kind: 'tick' }, (now += PAUSE_MS));
			expect(state.phase).toBe('reveal');
			state = step(state, { kind: 'next' }, now);
		}
		expect(state.results).toHaveLength(round.length);
		for (const { teams } of state.results)
			for (const { response, judgement } of teams)
				expect(judgement?.right ?? null).toBe(response ? true : null);
		const topics = summary(state);
		expect(topics.reduce((sum, one) => sum + one.answers, 0)).toBe(
			teamMarks(state).reduce((sum, one) => sum + one.right, 0),
		);
		expect(new Set(topics.map(({ topic }) => topic)).size).toBe(topics.length);
	});

	it('hints are counted and cost nothing; a skipped question counts for nobody', () => {
		let state = startRound('c', 'g', 1, round.length, 0);
		state = step(state, { kind: 'hint' }, 100);
		state = step(state, { kind: 'hint' }, 200);
		expect(state.hints).toBe(2);
		state = step(state, { kind: 'skip' }, 300);
		expect(state).toMatchObject({ at: 1, phase: 'think', hints: 0 });
		expect(state.results[0]).toMatchObject({ skipped: true, hints: 2 });
		expect(summary(state)).toEqual([]);
		state = step(state, { kind: 'end' }, 400);
		expect(state.phase).toBe('done');
		expect(step(state, { kind: 'skip' }, 500)).toBe(state);
	});

	it('is plain data: what was written out and read again goes on the same way', () => {
		let state = startRound('c', 'g', 3, round.length, 0);
		state = step(state, { kind: 'tick' }, THINK_MS);
		state = step(
			state,
			{ kind: 'answer', team: askedTeams(state, round[0])[0], response: rightAnswer(round[0]) },
			5000,
		);
		const back = JSON.parse(JSON.stringify(state)) as RoundState;
		expect(back).toEqual(state);
		expect(step(back, { kind: 'hint' }, 6000)).toEqual(step(state, { kind: 'hint' }, 6000));
	});

	it('a clock that jumps neither opens nor blocks', () => {
		const state = startRound('c', 'g', 1, round.length, 1_000_000);
		const back = step(state, { kind: 'tick' }, 5);
		expect(back).toMatchObject({ phase: 'think', since_ms: 5 });
		expect(step(back, { kind: 'tick' }, 5 + THINK_MS).phase).toBe('answer');
	});

	it('any events in any order leave a state that holds', () => {
		const event = fc.oneof(
			fc.constantFrom<RoundEvent>(
				{ kind: 'tick' },
				{ kind: 'hint' },
				{ kind: 'lock' },
				{ kind: 'next' },
				{ kind: 'skip' },
			),
			fc.record({ kind: fc.constant('turn' as const), team: fc.integer({ min: -1, max: 7 }) }),
			fc.record({
				kind: fc.constant('answer' as const),
				team: fc.integer({ min: -1, max: 7 }),
				response: fc.constant<Response>({ kind: 'order', teeth: [] }),
			}),
		);
		fc.assert(
			fc.property(
				fc.integer({ min: 1, max: 6 }),
				fc.array(fc.tuple(event, fc.integer({ min: 0, max: 5000 })), { maxLength: 120 }),
				(teams, events) => {
					let now = 0;
					let state = startRound('c', 'g', teams, round.length, now);
					for (const [one, passed] of events) {
						now += passed;
						const question = round[state.at];
						// what is answered has to be an answer to this question
						const fit = one.kind === 'answer' ? { ...one, response: rightAnswer(question) } : one;
						state = afterEvent(state, fit, question, now, toothOf(question));
						expect(state.answers).toHaveLength(teams);
						expect(state.turn).toBeGreaterThanOrEqual(0);
						expect(state.turn).toBeLessThan(teams);
						const told = state.phase === 'hush' || state.phase === 'reveal';
						expect(state.results).toHaveLength(
							state.phase === 'done' ? round.length : state.at + (told ? 1 : 0),
						);
					}
				},
			),
			{ numRuns: 300 },
		);
	});

	it('refuses teams that are none', () => {
		expect(() => startRound('c', 'g', 0, 5, 0)).toThrow(/teams/);
		expect(() => startRound('c', 'g', 7, 5, 0)).toThrow(/teams/);
		expect(startRound('c', 'g', 1, 0, 0).phase).toBe('done');
	});
});
