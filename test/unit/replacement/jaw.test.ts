import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cyclesAt, timeOfCycles } from '../../../src/lib/domain/replacement/cyclesAt';
import { CYCLE_SHARES } from '../../../src/lib/domain/replacement/cycleShares';
import { eruptionOrder } from '../../../src/lib/domain/replacement/eruptionOrder';
import { eruptionsBetween } from '../../../src/lib/domain/replacement/eruptionsBetween';
import { eruptionTime } from '../../../src/lib/domain/replacement/eruptionTime';
import type { Jaw } from '../../../src/lib/domain/replacement/jaw';
import { jawPlaces } from '../../../src/lib/domain/replacement/jawPlaces';
import { exposedAt, jawSnapshot } from '../../../src/lib/domain/replacement/jawSnapshot';
import { jitterBySeed } from '../../../src/lib/domain/replacement/jitterBySeed';
import { lagAt } from '../../../src/lib/domain/replacement/lagAt';
import { phaseAt } from '../../../src/lib/domain/replacement/phaseAt';
import { slowingGenerations } from '../../../src/lib/domain/replacement/shedCounts';
import { spaceTime } from '../../../src/lib/domain/replacement/spaceTime';

const jaws = fc.record({
	positions: fc.integer({ min: 1, max: 30 }),
	period_d: fc.double({ min: 10, max: 800, noNaN: true }),
	spacing: fc.double({ min: 0.7, max: 6, noNaN: true }),
	start_d: fc.double({ min: -500, max: 500, noNaN: true }),
});
const moment = fc.double({ min: -3000, max: 3000, noNaN: true });

describe('jaw', () => {
	it('replaces every position once per period (seed 17)', () => {
		fc.assert(
			fc.property(jaws, moment, (jaw, from) => {
				const seen = eruptionsBetween(jaw, from, from + jaw.period_d).map(({ position }) => position);
				// an eruption at the very edge may fall on either side by rounding
				const near = (t: number) => eruptionsBetween(jaw, t - 1e-6, t + 1e-6).length;
				if (near(from) + near(from + jaw.period_d) > 0) return;
				expect([...seen].sort((a, b) => a - b)).toEqual(
					Array.from({ length: jaw.positions }, (_, i) => i + 1),
				);
			}),
			{ seed: 17, numRuns: 300 },
		);
	});

	it('erupts in an order that is a permutation of its positions (seed 18)', () => {
		fc.assert(
			fc.property(jaws, (jaw) => {
				expect(
					eruptionOrder(jaw)
						.flat()
						.sort((a, b) => a - b),
				).toEqual(Array.from({ length: jaw.positions }, (_, i) => i + 1));
			}),
			{ seed: 18, numRuns: 200 },
		);
	});

	it('goes through its phases in step with its eruption times (seed 19)', () => {
		fc.assert(
			fc.property(jaws, moment, (jaw, t) => {
				for (const { position, generation, phase, erupted_d, next_d } of jawSnapshot(jaw, t)) {
					expect(phase).toBeGreaterThanOrEqual(0);
					expect(phase).toBeLessThan(1);
					expect(next_d - erupted_d).toBeCloseTo(jaw.period_d, 5);
					expect((t - erupted_d) / jaw.period_d).toBeCloseTo(phase, 5);
					expect(eruptionTime(jaw, position, generation)).toBe(erupted_d);
				}
			}),
			{ seed: 19, numRuns: 100 },
		);
	});

	it('with one number or a list of equal numbers is the same jaw', () => {
		const one: Jaw = { positions: 9, period_d: 90, spacing: 2.3 };
		const many: Jaw = { ...one, spacing: Array<number>(8).fill(2.3) };
		for (let t = 0; t < 200; t += 7)
			jawSnapshot(one, t).forEach(({ phase }, i) =>
				expect(jawSnapshot(many, t)[i].phase).toBeCloseTo(phase, 9),
			);
	});

	it('with spacing that varies: neighbours together where z = 1, alternate where z = 2', () => {
		const jaw: Jaw = { positions: 6, period_d: 100, spacing: [1, 1, 2, 2, 1] };
		expect([1, 2, 3, 4, 5, 6].map((n) => lagAt(jaw, n) % 1)).toEqual([0, 0, 0, 0.5, 0, 0]);
	});

	it('slows: each period is longer, and the generations are those of the formula', () => {
		const [first, last, life] = [110, 730, 12784];
		const jaw: Jaw = {
			positions: 1,
			period_d: first,
			spacing: 2,
			growth_per_d: Math.log(last / first) / life,
		};
		expect(cyclesAt(jaw, life)).toBeCloseTo(slowingGenerations(first, last, life), 9);
		for (const cycles of [-2, 0, 0.4, 12, 50])
			expect(cyclesAt(jaw, timeOfCycles(jaw, cycles))).toBeCloseTo(cycles, 9);
		const times = Array.from({ length: 40 }, (_, k) => eruptionTime(jaw, 1, k));
		const gaps = times.slice(1).map((t, i) => t - times[i]);
		gaps.slice(1).forEach((gap, i) => expect(gap).toBeGreaterThan(gaps[i]));
		expect(timeOfCycles(jaw, 1e6)).toBe(Infinity);
		expect(eruptionsBetween(jaw, 0, life)).toHaveLength(Math.floor(cyclesAt(jaw, life)));
	});

	it('jitters by seed without a tooth overtaking the next (seeds 1 to 20)', () => {
		for (let seed = 1; seed <= 20; seed++) {
			const jaw: Jaw = { positions: 12, period_d: 100, spacing: 2.4, jitter: jitterBySeed(seed, 0.2) };
			for (let n = 1; n <= 12; n++)
				for (let k = -3; k < 12; k++) {
					const [now, next] = [eruptionTime(jaw, n, k), eruptionTime(jaw, n, k + 1)];
					expect(next).toBeGreaterThan(now);
					expect(phaseAt(jaw, n, (now + next) / 2)).toMatchObject({ generation: k });
					expect(phaseAt(jaw, n, (now + next) / 2).phase).toBeCloseTo(0.5, 6);
				}
		}
		expect(jitterBySeed(3)(4, 5)).toBe(jitterBySeed(3)(4, 5));
		expect(jitterBySeed(3)(4, 5)).not.toBe(jitterBySeed(4)(4, 5));
	});

	it('is in use for the share of time that was asked for', () => {
		const jaw: Jaw = { positions: 1, period_d: 1000, spacing: 2 };
		const count: Record<string, number> = { erupting: 0, functional: 0, loosening: 0, empty: 0 };
		for (let t = 0; t < 1000; t++) count[jawSnapshot(jaw, t + 0.5)[0].state]++;
		expect(count).toEqual({
			erupting: 1000 * CYCLE_SHARES.erupting,
			functional: 600,
			loosening: 1000 * CYCLE_SHARES.loosening,
			empty: 1000 * CYCLE_SHARES.empty,
		});
		expect([0, 0.05, 0.5, 0.95].map((phase) => exposedAt(phase) > 0)).toEqual([false, true, true, false]);
	});

	it('has successors that grow through the stages below the gum', () => {
		const jaw: Jaw = { positions: 1, period_d: 100, spacing: 2 };
		const stages = [1, 30, 60, 95].map((t) => jawSnapshot(jaw, t)[0].successor);
		expect(stages).toEqual([0, 1, 2, 3]);
	});

	it('draws over time what snapshots say', () => {
		const jaw: Jaw = { positions: 7, period_d: 90, spacing: 1.7 };
		const picture = spaceTime(jaw, 100, 500, 80);
		for (const column of [0, 33, 79])
			jawSnapshot(jaw, 100 + (column + 0.5) * 5).forEach(({ phase, generation }, i) => {
				expect(picture.phases[i * 80 + column]).toBeCloseTo(phase, 5);
				expect(picture.generations[i * 80 + column]).toBe(generation);
			});
	});

	it('runs ten years of thirty positions in a moment', () => {
		const jaw: Jaw = { positions: 30, period_d: 90, spacing: 2.2 };
		expect(eruptionsBetween(jaw, 0, 3652.5)).toHaveLength(
			Array.from({ length: 30 }, (_, i) => Math.floor(3652.5 / 90 - i / 2.2) - Math.floor(-i / 2.2)).reduce(
				(a, b) => a + b,
				0,
			),
		);
	});
});

describe('jawPlaces', () => {
	it('left mirrors right', () => {
		const places = jawPlaces(14);
		const [right, left] = [places.slice(0, 14), places.slice(14)];
		right.forEach((place, i) => {
			expect(left[i]).toMatchObject({ side: 'left', position: place.position, along: place.along });
			expect(left[i].across).toBe(-place.across);
			expect(Math.cos(left[i].outward)).toBeCloseTo(-Math.cos(place.outward), 12);
			expect(Math.sin(left[i].outward)).toBeCloseTo(Math.sin(place.outward), 12);
		});
	});

	it('counts from the front, at even steps along the jaw', () => {
		const right = jawPlaces(12).slice(0, 12);
		const steps = right
			.slice(1)
			.map((p, i) => Math.hypot(p.along - right[i].along, p.across - right[i].across));
		right.slice(1).forEach((p, i) => expect(p.along).toBeGreaterThan(right[i].along));
		expect(Math.max(...steps) / Math.min(...steps)).toBeLessThan(1.1);
		// outward looks away from the middle line
		for (const p of right) expect(Math.cos(p.outward)).toBeGreaterThan(0);
	});
});
