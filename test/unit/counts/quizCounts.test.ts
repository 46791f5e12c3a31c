import { describe, expect, it } from 'vitest';
import { quizCountsSchema, quizEntries } from '../../../src/lib/server/counts/quizCounts';

const batch = '3f0c0c5e-8e2b-4c1f-9a53-0b7d1c2e4f60';
const answer = {
	question: 'choose-size-most-skm-0104',
	option: 'skm-0107',
	right: false,
	hinted: true,
	band: '7-11',
};
const taker = { question: answer.question, option: 'skm-0107', right: false, total: 3, of: 5 };
const round = { round: '547123', total: 3, of: 5 };
const good = { batch, answers: [answer], takers: [taker], rounds: [round] };
const taken = (body: unknown) => quizCountsSchema.safeParse(body).success;

describe('quizCountsSchema', () => {
	it('takes what a screen sends', () => {
		expect(taken(good)).toBe(true);
		expect(taken({ batch, answers: [], takers: [], rounds: [] })).toBe(true);
	});

	it.each<[string, unknown]>([
		['nothing', null],
		['a list', [good]],
		['a word', 'counts'],
		['no name of the sending', { ...good, batch: undefined }],
		['a sending named by a person', { ...good, batch: 'Ms Smith, class 4b' }],
		['a field more', { ...good, who: 'anna' }],
		['a field more in an answer', { ...good, answers: [{ ...answer, name: 'Anna' }] }],
		['a time of day', { ...good, answers: [{ ...answer, at: '10:42' }] }],
		['free text as a question', { ...good, answers: [{ ...answer, question: 'What is your name?' }] }],
		['a name as a question', { ...good, answers: [{ ...answer, question: 'anna-miller' }] }],
		['free text as an option', { ...good, answers: [{ ...answer, option: 'Anna Miller' }] }],
		['an address as an option', { ...good, answers: [{ ...answer, option: '192.168.0.7' }] }],
		['a script', { ...good, answers: [{ ...answer, option: '<script>' }] }],
		[
			'a statement to the database',
			{ ...good, answers: [{ ...answer, option: "x'); drop table tally;--" }] },
		],
		['a very long word', { ...good, answers: [{ ...answer, option: 'a'.repeat(161) }] }],
		['a band of no age', { ...good, answers: [{ ...answer, band: '30-40' }] }],
		['a right that is a word', { ...good, answers: [{ ...answer, right: 'yes' }] }],
		['seven answers', { ...good, answers: Array(7).fill(answer) }],
		['ninety-one takers', { ...good, takers: Array(91).fill(taker) }],
		['sixteen right', { ...good, takers: [{ ...taker, total: 16 }] }],
		['half a right one', { ...good, takers: [{ ...taker, total: 2.5 }] }],
		['less than nothing', { ...good, rounds: [{ ...round, of: -1 }] }],
		['a round of words', { ...good, rounds: [{ ...round, round: 'class4' }] }],
		[
			'a key to the prototype',
			JSON.parse(`{"__proto__":{"x":1},"batch":"${batch}","answers":[],"takers":[]}`),
		],
	])('refuses %s', (_what, body) => {
		expect(taken(body)).toBe(false);
	});

	it('becomes entries of known kinds with nothing but ids, yes or no, and small numbers', () => {
		const entries = quizEntries(quizCountsSchema.parse(good));
		expect(entries).toEqual([
			{ kind: 'quiz-answer', facts: answer },
			{ kind: 'quiz-taker', facts: { ...taker, round: '547123' } },
			{ kind: 'quiz-round', facts: round },
		]);
		expect(JSON.stringify(entries)).not.toContain(batch);
	});
});
