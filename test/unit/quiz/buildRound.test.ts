import { describe, expect, it } from 'vitest';
import type { TraitId } from '../../../src/lib/domain/compare/traits';
import { buildRound, type QuizGround } from '../../../src/lib/domain/quiz/buildRound';
import { AGE_BANDS, ROUND_LENGTHS, type Question } from '../../../src/lib/domain/quiz/question';
import { seeded } from '../../../src/lib/domain/quiz/seeded';
import { randomGround } from './randomGround';

/** numbers have to lie this far apart to be asked for: a quarter more or less, three steps of 8 %; of degrees 15 */
const APART: Partial<Record<TraitId, (big: number, small: number) => boolean>> = {
	size: (a, b) => a / b >= 1.08 ** 3 - 1e-9,
	slenderness: (a, b) => a / b >= 1.08 ** 3 - 1e-9,
	roundness: (a, b) => a / b >= 1.08 ** 3 - 1e-9,
	tip: (a, b) => a / b >= 1.15 ** 3 - 1e-9,
	curvature: (a, b) => a - b >= 15 - 1e-9,
	wear: (a, b) => a - b >= 0.03 - 1e-9,
};

/** Which teeth answer a "choose" question, worked out from its name and the teeth alone, without the builder's code. */
function answers(question: Question, ground: QuizGround): { right: string[]; clear: boolean } {
	const [, trait, way] = question.id.split('-');
	const id =
		(['tipWorn', 'edgeSide', 'ridgeSide'] as const).find((one) => one.toLowerCase() === trait) ??
		(trait as TraitId);
	const shown = question.teeth.map((one) => ground.teeth.find((tooth) => tooth.id === one)!);
	const values = shown.map((tooth) => tooth.traits[id].value);
	if (values.some((value) => value === null)) return { right: [], clear: false };
	if (way === 'most' || way === 'least') {
		const sorted = shown
			.map((tooth) => ({ id: tooth.id, value: Number(tooth.traits[id].value) }))
			.sort((a, b) => (way === 'most' ? b.value - a.value : a.value - b.value));
		const [first, second] = sorted;
		const big = Math.max(first.value, second.value);
		return { right: [first.id], clear: APART[id]!(big, Math.min(first.value, second.value)) };
	}
	const right = shown
		.filter((tooth) => String(tooth.traits[id].value).toLowerCase() === way)
		.map((tooth) => tooth.id);
	// ovals pass into round and into blades; uneven outlines into anything; a side of a scan may be the one asked for
	const near: Record<string, string[]> = {
		round: ['oval', 'other'],
		blade: ['oval', 'other'],
		triangular: ['other'],
	};
	const blurred =
		(id === 'section' && values.some((value) => near[way].includes(String(value)))) ||
		(id === 'ridgeSide' && values.includes('one-side')) ||
		(id === 'ridges' && way === 'many' && values.includes('few'));
	return { right, clear: !blurred };
}

describe('buildRound', () => {
	it('10,000 rounds from random exhibits: one right answer, no option twice, no topic twice in a row', () => {
		const random = seeded('many exhibits');
		const places = [0, 0, 0];
		let questions = 0;
		let full = 0;
		for (let round = 0; round < 10_000; round += 1) {
			// a new exhibit for every ten rounds
			if (round % 10 === 0) ground = randomGround(4 + Math.floor(random() * 14), random);
			const band = AGE_BANDS[round % 3];
			const length = ROUND_LENGTHS[Math.floor(round / 3) % 3];
			const built = buildRound(ground!, band, length, round % 10_000);
			if (built.length === length) full += 1;
			expect(new Set(built.map(({ id }) => id)).size).toBe(built.length);
			built.forEach((question, at) => {
				questions += 1;
				if (at > 0 && question.topic === built[at - 1].topic)
					throw new Error(`${question.id}: topic twice in a row`);
				const ids = question.options.map(({ id }) => id);
				if (new Set(ids).size !== ids.length || ids.length !== 3)
					throw new Error(`${question.id}: options ${ids}`);
				if (question.margin < 1) throw new Error(`${question.id}: margin ${question.margin}`);
				const right = question.options.filter((option) => option.right);
				if (question.kind === 'order') {
					expect([...(question.task.kind === 'order' ? question.task.right : [])].sort()).toEqual(
						[...ids].sort(),
					);
					return;
				}
				if (right.length !== 1) throw new Error(`${question.id}: ${right.length} right answers`);
				const place = question.options.indexOf(right[0]);
				if (['choose', 'touch', 'match', 'caliper'].includes(question.kind)) places[place] += 1;
				if (question.kind !== 'choose') return;
				const found = answers(question, ground!);
				if (!found.clear) throw new Error(`${question.id}: not clear`);
				expect(found.right).toEqual([right[0].id]);
				if (question.teeth.some((id, i) => id !== ids[i]))
					throw new Error(`${question.id}: teeth and options differ`);
			});
		}
		expect(questions).toBeGreaterThan(80_000);
		expect(full / 10_000).toBeGreaterThan(0.8);
		// chi-square with 2 degrees of freedom: 13.8 is passed by chance once in a thousand
		const each = (places[0] + places[1] + places[2]) / 3;
		const chi2 = places.reduce((sum, count) => sum + (count - each) ** 2 / each, 0);
		expect(chi2).toBeLessThan(13.8);
	}, 180_000);

	let ground: QuizGround | null = null;

	it('orders stand apart at every step', () => {
		const random = seeded('orders');
		let seen = 0;
		for (let i = 0; i < 200; i += 1) {
			const one = randomGround(16, random);
			for (const question of buildRound(one, AGE_BANDS[i % 3], 15, i)) {
				if (question.task.kind !== 'order' || question.topic === 'root') continue;
				const trait = question.topic as TraitId;
				const values = question.task.right.map((id) =>
					Number(one.teeth.find((tooth) => tooth.id === id)!.traits[trait].value),
				);
				expect(APART[trait]!(values[1], values[0]), question.id).toBe(true);
				expect(APART[trait]!(values[2], values[1]), question.id).toBe(true);
				seen += 1;
			}
		}
		expect(seen).toBeGreaterThan(50);
	});

	it('is the same for the same seed and another for another', () => {
		const one = randomGround(14, seeded('same'));
		expect(buildRound(one, '7-11', 10, 42)).toEqual(buildRound(one, '7-11', 10, 42));
		const ids = (seed: number) =>
			buildRound(one, '7-11', 10, seed)
				.map(({ id }) => id)
				.join();
		expect(ids(42)).not.toBe(ids(43));
	});

	it('grows harder and mixes kinds', () => {
		const random = seeded('climb');
		let rising = 0;
		for (let i = 0; i < 100; i += 1) {
			const built = buildRound(randomGround(20, random), '11-14', 15, i);
			const mean = (part: readonly Question[]) =>
				part.reduce((sum, { difficulty }) => sum + (difficulty ?? 0), 0) / part.length;
			if (mean(built.slice(10)) > mean(built.slice(0, 5))) rising += 1;
			expect(new Set(built.map(({ kind }) => kind)).size).toBeGreaterThan(3);
			for (const kind of new Set(built.map((one) => one.kind)))
				expect(built.filter((one) => one.kind === kind).length).toBeLessThanOrEqual(6);
		}
		expect(rising).toBeGreaterThan(85);
	});

	it('keeps to the kinds that are on, and is short rather than wrong', () => {
		const one = randomGround(12, seeded('off'));
		const built = buildRound({ ...one, off: ['choose', 'touch', 'order', 'match', 'place'] }, '7-11', 15, 7);
		expect(built.length).toBeGreaterThan(0);
		for (const { kind } of built) expect(['shed', 'position', 'caliper', 'claim']).toContain(kind);
		expect(buildRound({ ...one, teeth: [], claims: [] }, '7-11', 10, 1)).toEqual([]);
	});

	it('takes what a curator wrote, with its own teeth only', () => {
		const one = randomGround(6, seeded('own'));
		const own = {
			id: 'mine',
			bands: ['5-7' as const],
			topic: 'mine',
			teeth: ['t1', 't2', 't3'],
			right: 't2',
		};
		const ground = { ...one, own: [own, { ...own, id: 'gone', teeth: ['t1', 'none', 't2'] }] };
		const asked = Array.from({ length: 40 }, (_, seed) => buildRound(ground, '5-7', 15, seed)).flat();
		const mine = asked.filter(({ id }) => id.startsWith('own-'));
		expect(mine.length).toBeGreaterThan(0);
		expect(mine.every(({ id }) => id === 'own-mine')).toBe(true);
		expect(new Set(mine.flatMap(({ options }) => options.filter((o) => o.right).map((o) => o.id)))).toEqual(
			new Set(['t2']),
		);
	});
});
