import { describe, expect, it } from 'vitest';
import { cornerHold, HOLD_ms, inCorner, SHOW_ms } from '../../../src/lib/kiosk/cornerHold';

function corner() {
	let now_ms = 0;
	let waiting: { at_ms: number; call: () => void }[] = [];
	const seen: ({ x: number; y: number } | null)[] = [];
	let opened = 0;
	const hold = cornerHold(
		(at) => void seen.push(at),
		() => void (opened += 1),
		(call, ms) => {
			const one = { at_ms: now_ms + ms, call };
			waiting.push(one);
			return () => (waiting = waiting.filter((other) => other !== one));
		},
	);
	const pass = (ms: number) => {
		now_ms += ms;
		for (const one of waiting.filter(({ at_ms }) => at_ms <= now_ms)) {
			waiting = waiting.filter((other) => other !== one);
			one.call();
		}
	};
	return { hold, seen, pass, opened: () => opened };
}

describe('cornerHold', () => {
	it('opens after three seconds of one finger, and shows on the way that it is held', () => {
		const { hold, seen, pass, opened } = corner();
		hold.down(1, 10, 10);
		pass(SHOW_ms - 1);
		expect(seen).toEqual([]);
		pass(1);
		expect(seen).toEqual([{ x: 10, y: 10 }]);
		pass(HOLD_ms - SHOW_ms - 1);
		expect(opened()).toBe(0);
		pass(1);
		expect(opened()).toBe(1);
		expect(seen.at(-1)).toBeNull();
		hold.up(1);
		pass(HOLD_ms);
		expect(opened()).toBe(1);
	});

	it('is nothing when the finger lifts, is lost or wanders', () => {
		for (const end of [
			({ hold }: ReturnType<typeof corner>) => hold.up(1),
			({ hold }: ReturnType<typeof corner>) => hold.drop(),
			({ hold }: ReturnType<typeof corner>) => hold.move(1, 40, 10),
		]) {
			const all = corner();
			all.hold.down(1, 10, 10);
			all.pass(HOLD_ms - 1);
			end(all);
			all.pass(HOLD_ms);
			expect(all.opened()).toBe(0);
			expect(all.seen.at(-1)).toBeNull();
		}
	});

	it('bears a finger that trembles and what others do elsewhere; two in the corner are a hand', () => {
		const { hold, pass, opened } = corner();
		hold.down(1, 10, 10);
		hold.move(1, 18, 14);
		hold.move(2, 900, 900);
		hold.up(2);
		pass(HOLD_ms);
		expect(opened()).toBe(1);
		hold.down(3, 10, 10);
		hold.down(4, 30, 30);
		pass(HOLD_ms);
		expect(opened()).toBe(1);
	});
});

describe('inCorner', () => {
	const wide = { width_px: 1920, top_px: 0, side_px: 72, rightToLeft: false };
	it('is at the top, at the end of the line', () => {
		expect(inCorner(1900, 20, wide)).toBe(true);
		expect(inCorner(1849, 71, wide)).toBe(true);
		for (const [x, y] of [
			[20, 20],
			[1900, 73],
			[1847, 20],
			[1900, 1060],
		])
			expect(inCorner(x, y, wide), `${x} ${y}`).toBe(false);
		expect(inCorner(20, 20, { ...wide, rightToLeft: true })).toBe(true);
		expect(inCorner(1900, 20, { ...wide, rightToLeft: true })).toBe(false);
	});
	it('lies within reach in the low layout', () => {
		const low = { ...wide, top_px: 500 };
		expect(inCorner(1900, 20, low)).toBe(false);
		expect(inCorner(1900, 520, low)).toBe(true);
	});
});
