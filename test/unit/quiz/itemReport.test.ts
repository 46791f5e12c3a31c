import { describe, expect, it } from 'vitest';
import { itemReport, type AnswerCount, type TakerCount } from '../../../src/lib/domain/quiz/items/itemReport';
import { correctedItemTotal } from '../../../src/lib/domain/quiz/items/pointBiserial';
import { kr20, totalsOf } from '../../../src/lib/domain/quiz/items/reliability';
import { roundReliability } from '../../../src/lib/domain/quiz/items/roundReliability';
import { seeded } from '../../../src/lib/domain/quiz/seeded';

// the ten takers and five questions of test/reference/item-analysis.test.ts
const A = '11111 11110 11101 11100 11010 10100 11000 10000 01000 00001'
	.split(' ')
	.map((row) => [...row].map((mark) => mark === '1'));

function counted(matrix: boolean[][]): { answers: AnswerCount[]; takers: TakerCount[] } {
	const totals = totalsOf(matrix);
	const takers = matrix.flatMap((row, i) =>
		row.map((right, k) => ({
			question: `q${k}`,
			option: right ? 'good' : 'bad',
			right,
			total: totals[i],
			of: row.length,
			count: 1,
		})),
	);
	return {
		takers,
		answers: takers.map(({ question, option, right }) => ({
			question,
			option,
			right,
			hinted: false,
			count: 1,
		})),
	};
}

describe('itemReport', () => {
	it('gives from counts what the answers themselves give', () => {
		const { answers, takers } = counted(A);
		const report = itemReport(answers, takers);
		for (const one of report) {
			const k = Number(one.question.slice(1));
			expect(one.p).toBeCloseTo([0.8, 0.7, 0.5, 0.3, 0.3][k], 12);
			expect(one.r).toBeCloseTo(
				correctedItemTotal(
					A.map((row) => row[k]),
					totalsOf(A),
				)!,
				10,
			);
		}
	});

	it('KR-20 from counts is KR-20 from answers', () => {
		const { takers } = counted(A);
		const totals = totalsOf(A).map((total) => ({ total, of: 5, count: 1 }));
		expect(roundReliability(totals, takers)).toBeCloseTo(0.5435, 4);
		const random = seeded('rounds');
		const big = Array.from({ length: 200 }, () => {
			const able = random();
			return Array.from({ length: 8 }, (_, k) => random() < able * (1 - k / 20));
		});
		expect(
			roundReliability(
				totalsOf(big).map((total) => ({ total, of: 8, count: 1 })),
				counted(big).takers,
			),
		).toBeCloseTo(kr20(big)!, 10);
		expect(roundReliability(totals.slice(0, 9), takers)).toBeNull();
	});

	it('says too few under ten answers and gives no figure', () => {
		const { answers, takers } = counted(A.slice(0, 9));
		for (const one of itemReport(answers, takers)) {
			expect(one).toMatchObject({ p: null, interval: null, d: null, r: null, advice: ['too-few'] });
			expect(one.answers).toBe(9);
		}
	});

	it('all right: difficulty 1, no correlation, too easy', () => {
		const all = Array.from({ length: 12 }, (_, i) => [true, i % 2 === 0, i % 3 === 0]);
		const { answers, takers } = counted(all);
		const q0 = itemReport(answers, takers).find(({ question }) => question === 'q0')!;
		expect(q0).toMatchObject({ p: 1, r: null });
		expect(q0.advice).toContain('too-easy');
	});

	it('a wrong key shows: the able choose another option', () => {
		const rows = Array.from({ length: 40 }, (_, i) => {
			const able = i < 20;
			return [!able, able, able, able];
		});
		const { answers, takers } = counted(rows);
		const q0 = itemReport(answers, takers).find(({ question }) => question === 'q0')!;
		expect(q0.d).toBeLessThan(0);
		expect(q0.advice).toContain('check-key');
	});

	it('an option that nobody takes does nothing', () => {
		const answers: AnswerCount[] = [
			{ question: 'q', option: 'a', right: true, hinted: true, count: 30 },
			{ question: 'q', option: 'b', right: false, hinted: false, count: 19 },
			{ question: 'q', option: 'c', right: false, hinted: false, count: 1 },
		];
		const [one] = itemReport(answers, []);
		expect(one.advice).toContain('idle-option');
		expect(one.hinted).toBe(30);
		expect(one.interval!.low).toBeLessThan(0.6);
		expect(one.d).toBeNull();
	});
});
