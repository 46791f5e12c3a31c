import { describe, expect, it } from 'vitest';
import { judge, touched } from '../../../src/lib/domain/quiz/judge';
import type { Question, QuizTooth } from '../../../src/lib/domain/quiz/question';
import { seeded } from '../../../src/lib/domain/quiz/seeded';
import { touchQuestions } from '../../../src/lib/domain/quiz/thingQuestions';
import { caliperQuestions } from '../../../src/lib/domain/quiz/numberQuestions';
import { randomTooth } from './randomGround';

const tooth: QuizTooth = {
	...randomTooth('a', seeded('judge')),
	crownHeight_mm: 40,
	parts: [
		{ kind: 'tip', at: 1, where_deg: 90 },
		{ kind: 'carina', at: 0.5, where_deg: 0, from: 0.2, to: 0.9 },
		{ kind: 'carina', at: 0.5, where_deg: 180, from: 0.2, to: 0.9 },
		{ kind: 'pit', at: -0.3, where_deg: 270 },
	],
};
const touch = (at: number, where_deg: number) => ({ kind: 'touch' as const, at, where_deg, radius_mm: 5 });
const asked = (target: string): Question =>
	touchQuestions([tooth], '7-11', seeded('x')).find(
		({ task }) => task.kind === 'touch' && task.target === target,
	)!;

describe('judge', () => {
	it('an edge is right anywhere along it, on either side, also across 0 degrees', () => {
		const edge = asked('carina');
		for (const [at, where] of [
			[0.3, 5],
			[0.6, 355],
			[0.5, 170],
			[0.84, 200],
		])
			expect(judge(edge, touch(at, where), tooth).right, `${at} ${where}`).toBe(true);
		for (const [at, where] of [
			[0.5, 90],
			[0.5, 270],
			[-0.4, 0],
			[0.5, 30],
		])
			expect(judge(edge, touch(at, where), tooth).right, `${at} ${where}`).toBe(false);
	});

	it('says what was touched instead', () => {
		expect(judge(asked('carina'), touch(-0.3, 270), tooth)).toMatchObject({
			right: false,
			counted: 'pit',
			why: { key: 'quiz_part_not', values: { found: 'pit', wanted: 'carina' } },
		});
		expect(judge(asked('pit'), touch(0.95, 10), tooth)).toMatchObject({ right: false, counted: 'tip' });
		expect(touched({ at: -0.3, where_deg: 90 }, tooth)).toBe('root');
		expect(touched({ at: 0.4, where_deg: 90 }, tooth)).toBe('side');
	});

	it('pins offered beside the right one are never right themselves', () => {
		for (let i = 0; i < 400; i += 1) {
			const other = randomTooth(`t${i}`, seeded(`pins ${i}`));
			for (const question of touchQuestions([other], '11-14', seeded(`q ${i}`)))
				for (const option of question.options) {
					if (option.label.kind !== 'part') throw new Error('no part');
					const { at, where_deg } = option.label.part;
					expect(judge(question, touch(at, where_deg), other).right, `${question.id} ${option.id}`).toBe(
						option.right,
					);
				}
		}
	});

	it('a reading is right within the tolerance and told as too short or too long beyond it', () => {
		const [question] = caliperQuestions(
			[
				{
					...tooth,
					traits: {
						...tooth.traits,
						tipWorn: { ...tooth.traits.tipWorn, value: false },
						size: { ...tooth.traits.size, value: 40 },
					},
				},
			],
			'11-14',
			seeded('c'),
		);
		const reading = (mm: number) => judge(question, { kind: 'reading', mm });
		expect(reading(40).right).toBe(true);
		expect(reading(43.1).right).toBe(true);
		expect(reading(43.3)).toMatchObject({ right: false, counted: 'long' });
		expect(reading(36.7)).toMatchObject({ right: false, counted: 'short' });
		for (const option of question.options)
			if (!option.right && option.label.kind === 'word')
				expect(Math.abs(Number(option.label.message.values.mm) - 40)).toBeGreaterThan(3.2 * 1.5);
	});

	it('an order is right as a whole, and the first tooth that stands wrong says where it belongs', () => {
		const question = {
			id: 'order-size-a-b-c',
			task: { kind: 'order', right: ['a', 'b', 'c'] },
			options: ['c', 'a', 'b'].map((id) => ({
				id,
				right: false,
				why: { key: `why-${id}`, values: {} },
				label: { kind: 'tooth', tooth: id },
			})),
			because: { key: 'because', values: {} },
		} as unknown as Question;
		const order = (...teeth: string[]) => judge(question, { kind: 'order', teeth });
		expect(order('a', 'b', 'c')).toMatchObject({ right: true, counted: 'right' });
		expect(order('a', 'c', 'b')).toMatchObject({
			right: false,
			counted: 'first-wrong-2',
			why: { key: 'why-c' },
		});
		expect(order('a', 'b')).toMatchObject({ right: false, counted: 'first-wrong-3' });
	});

	it('refuses what the question does not have', () => {
		expect(() => judge(asked('pit'), { kind: 'option', option: 'none' })).toThrow(/no option/);
		expect(() => judge(asked('pit'), { kind: 'reading', mm: 3 })).toThrow(/no reading/);
		expect(() => judge(asked('pit'), { kind: 'order', teeth: [] })).toThrow(/no order/);
	});
});
