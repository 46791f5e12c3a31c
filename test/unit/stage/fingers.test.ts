import { describe, expect, test } from 'vitest';
import { createFingers, type Contact, type Hands } from '../../../src/lib/stage/fingers';
import { DOUBLE_TAP_ms, HAND_contacts, PALM_px, REST_ms, TAP_ms } from '../../../src/lib/stage/thresholds';

/** Hands that write down what they were told. */
const watch = (tapUsed = false) => {
	const told: string[] = [];
	const sum = { dx: 0, dy: 0, zoom: 1 };
	const hands: Hands = {
		grab: () => told.push('grab'),
		drag: (dx, dy) => {
			told.push('drag');
			sum.dx += dx;
			sum.dy += dy;
		},
		flick: () => told.push('flick'),
		zoom: (factor) => {
			told.push('zoom');
			sum.zoom *= factor;
		},
		reset: () => told.push('reset'),
		tap: () => {
			told.push('tap');
			return tapUsed;
		},
	};
	const fingers = createFingers(hands);
	let t = 0;
	const at = (id: number, x: number, y: number, more: Partial<Contact> = {}): Contact => ({
		id,
		kind: 'touch',
		x,
		y,
		t,
		size_px: 20,
		...more,
	});
	return {
		told,
		sum,
		fingers,
		wait: (ms: number) => (t += ms),
		down: (id: number, x: number, y: number, more?: Partial<Contact>) => fingers.down(at(id, x, y, more)),
		/** in steps of 10 ms */
		move(id: number, from: [number, number], to: [number, number], more?: Partial<Contact>, steps = 5) {
			for (let i = 1; i <= steps; i += 1) {
				t += 10;
				const share = i / steps;
				fingers.move(at(id, from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share, more));
			}
		},
		up: (id: number, x: number, y: number, more?: Partial<Contact>) => fingers.up(at(id, x, y, more)),
	};
};

describe('one finger', () => {
	test('turns by what it travels once it has begun, and flicks when let go in motion', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.move(1, [0, 0], [100, 20]);
		it.up(1, 100, 20);
		expect(it.told[0]).toBe('grab');
		expect(it.sum.dx).toBeCloseTo(100, 8);
		expect(it.sum.dy).toBeCloseTo(20, 8);
		expect(it.told.at(-1)).toBe('flick');
		expect(it.told).not.toContain('tap');
		expect(it.fingers.held).toBe(0);
	});

	test('that has come to rest before it lifts does not flick', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.move(1, [0, 0], [100, 0]);
		it.wait(200);
		it.up(1, 100, 0);
		expect(it.told).not.toContain('flick');
	});

	test('that trembles turns nothing; a short touch is a tap, two are a reset, a long one neither', () => {
		const it = watch();
		for (let i = 0; i < 2; i += 1) {
			it.down(1, 50, 50);
			it.move(1, [50, 50], [53, 52], {}, 3);
			it.up(1, 53, 52);
			it.wait(DOUBLE_TAP_ms / 3);
		}
		expect(it.told).toEqual(['grab', 'tap', 'grab', 'tap', 'reset']);
		it.down(1, 50, 50);
		it.wait(TAP_ms + 1);
		it.up(1, 50, 50);
		expect(it.told.slice(5)).toEqual(['grab']);
	});

	test('whose tap has been used up does not begin a double tap', () => {
		const it = watch(true);
		for (let i = 0; i < 2; i += 1) {
			it.down(1, 50, 50);
			it.up(1, 50, 50);
		}
		expect(it.told).not.toContain('reset');
	});

	test('a mouse needs less way than a finger', () => {
		const mouse = watch();
		mouse.down(1, 0, 0, { kind: 'mouse' });
		mouse.move(1, [0, 0], [4, 0], { kind: 'mouse' });
		const finger = watch();
		finger.down(1, 0, 0);
		finger.move(1, [0, 0], [4, 0]);
		expect(mouse.told).toContain('drag');
		expect(finger.told).not.toContain('drag');
	});
});

describe('two fingers', () => {
	test('zoom by how far they spread, turn nothing, and end without tap or flick', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.down(2, 100, 0);
		it.move(2, [100, 0], [208, 0], {}, 54);
		it.up(2, 208, 0);
		it.up(1, 0, 0);
		// the first 8 px only begin it
		expect(it.sum.zoom).toBeGreaterThan(208 / 111);
		expect(it.sum.zoom).toBeLessThan(208 / 107);
		expect(it.told).not.toContain('drag');
		expect(it.told).not.toContain('tap');
		expect(it.told).not.toContain('flick');
	});

	test('one of them lifted: the other turns on without a jump', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.down(2, 200, 0);
		it.move(1, [0, 0], [-60, 0]);
		it.up(2, 200, 0);
		it.move(1, [-60, 0], [-60, 50], {}, 50);
		expect(it.sum.dx).toBe(0);
		expect(it.sum.dy).toBeGreaterThan(40);
		expect(it.sum.dy).toBeLessThanOrEqual(50);
	});

	test('a third finger changes nothing, and takes over without a jump', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.down(2, 200, 0);
		it.down(3, 500, 500);
		it.move(3, [500, 500], [900, 900]);
		expect(it.told).not.toContain('zoom');
		it.up(1, 0, 0);
		expect(it.sum.zoom).toBe(1);
		const before = Math.hypot(700, 900);
		it.move(3, [900, 900], [1600, 1800], {}, 400);
		expect(it.sum.zoom).toBeGreaterThan(1.5);
		expect(it.sum.zoom).toBeLessThanOrEqual(Math.hypot(1400, 1800) / before + 1e-9);
	});
});

describe('what rests on the screen', () => {
	test('a broad contact turns nothing and does not hinder a finger beside it', () => {
		const it = watch();
		it.down(1, 300, 300, { size_px: PALM_px + 1 });
		it.move(1, [300, 300], [360, 340], { size_px: PALM_px + 20 });
		expect(it.told).toEqual([]);
		it.down(2, 0, 0);
		it.move(2, [0, 0], [100, 0]);
		it.up(2, 100, 0);
		expect(it.sum.dx).toBeCloseTo(100, 8);
		expect(it.told).not.toContain('zoom');
		it.up(1, 360, 340, { size_px: PALM_px + 20 });
		expect(it.told.filter((what) => what === 'tap')).toEqual([]);
	});

	test('a contact that grows broad stops to count', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.move(1, [0, 0], [40, 0]);
		const { dx } = it.sum;
		it.move(1, [40, 0], [400, 0], { size_px: PALM_px * 2 });
		expect(it.sum.dx).toBe(dx);
		it.up(1, 400, 0);
		expect(it.told).not.toContain('flick');
	});

	test('the spots of a palm that tremble do not zoom', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.down(2, 120, 0);
		for (let i = 0; i < 100; i += 1) it.move(2, [120, 0], [120 + (i % 5), i % 3], {}, 1);
		expect(it.told).toEqual(['grab']);
	});

	test('more touches than a pinch and a spare one are a hand laid flat: none counts until it lifts', () => {
		const it = watch();
		for (let id = 1; id <= HAND_contacts + 1; id += 1) it.down(id, id * 60, 0);
		it.told.length = 0;
		for (let id = 1; id <= HAND_contacts + 1; id += 1) it.move(id, [id * 60, 0], [id * 90, 300]);
		expect(it.told).toEqual([]);
		// a finger beside the hand works
		it.down(9, 0, 0);
		it.move(9, [0, 0], [0, 80]);
		it.up(9, 0, 80);
		expect(it.sum.dy).toBeCloseTo(80, 8);
		for (let id = 1; id <= HAND_contacts + 1; id += 1) it.up(id, id * 90, 300);
		expect(it.fingers.held).toBe(0);
		it.down(1, 0, 0);
		it.move(1, [0, 0], [50, 0]);
		expect(it.sum.dx).toBeCloseTo(50, 8);
	});

	test('a touch that has lain still for long beside a new one only rests; alone it still is a finger', () => {
		const it = watch();
		it.down(1, 300, 300);
		it.wait(REST_ms + 1);
		it.down(2, 0, 0);
		it.move(2, [0, 0], [100, 0]);
		expect(it.sum.dx).toBeCloseTo(100, 8);
		expect(it.told).not.toContain('zoom');
		const alone = watch();
		alone.down(1, 0, 0);
		alone.wait(REST_ms * 3);
		alone.move(1, [0, 0], [70, 0]);
		expect(alone.sum.dx).toBeCloseTo(70, 8);
	});
});

describe('nothing sticks', () => {
	test('a contact whose end was never heard of is forgotten in favour of the next ones', () => {
		const it = watch();
		it.down(1, 0, 0); // never lifted
		it.wait(REST_ms + 1);
		for (let visitor = 0; visitor < 20; visitor += 1) {
			const id = 10 + visitor;
			const { dx } = it.sum;
			it.down(id, 0, 0);
			it.move(id, [0, 0], [40, 0]);
			it.up(id, 40, 0);
			it.wait(500);
			expect(it.sum.dx - dx).toBeCloseTo(40, 8);
		}
	});

	test('cancelled and let go: no tap, no flick, no turn after it', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.move(1, [0, 0], [60, 0]);
		it.fingers.cancel(1);
		it.move(1, [60, 0], [90, 0]);
		it.up(1, 90, 0);
		expect(it.sum.dx).toBeCloseTo(60, 8);
		it.down(2, 0, 0);
		it.down(3, 100, 0);
		it.fingers.letGo();
		it.move(2, [0, 0], [500, 0]);
		it.up(2, 500, 0);
		it.up(3, 100, 0);
		expect(it.told.filter((what) => what === 'drag' || what === 'zoom')).toHaveLength(
			it.told.filter((what) => what === 'drag').length,
		);
		expect(it.told).not.toContain('tap');
		expect(it.told).not.toContain('flick');
		expect(it.fingers.held).toBe(0);
	});

	test('the same contact down twice counts once', () => {
		const it = watch();
		it.down(1, 0, 0);
		it.down(1, 500, 500);
		it.move(1, [500, 500], [540, 500]);
		expect(it.sum.dx).toBeCloseTo(40, 8);
		expect(it.fingers.held).toBe(1);
	});

	test('after any run of events a fresh finger turns the tooth', () => {
		let seed = 11;
		const random = (below: number) => {
			seed = (seed * 1103515245 + 12345) & 0x7fffffff;
			return (seed >> 8) % below;
		};
		for (let run = 0; run < 200; run += 1) {
			const it = watch();
			for (let i = 0; i < 60; i += 1) {
				const [id, x, y] = [random(6), random(600), random(400)];
				const size_px = random(10) === 0 ? 200 : 20;
				it.wait(random(5) === 0 ? random(4000) : 16);
				[
					() => it.down(id, x, y, { size_px }),
					() => it.move(id, [x, y], [random(600), random(400)], { size_px }, 3),
					() => it.up(id, x, y),
					() => it.fingers.cancel(id),
					() => random(8) === 0 && it.fingers.letGo(),
				][random(5)]();
				expect(Number.isFinite(it.sum.dx + it.sum.dy + it.sum.zoom)).toBe(true);
				expect(it.sum.zoom).toBeGreaterThan(0);
			}
			it.wait(REST_ms + 1);
			const { dx } = it.sum;
			it.down(77, 0, 0);
			it.move(77, [0, 0], [50, 0]);
			expect(it.sum.dx - dx).toBeCloseTo(50, 8);
		}
	});
});
