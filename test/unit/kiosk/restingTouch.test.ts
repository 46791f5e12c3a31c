import { describe, expect, it } from 'vitest';
import { FORGOTTEN_ms, LEANING_ms, MOST_TOUCHES, restingTouch } from '../../../src/lib/kiosk/restingTouch';
import { REST_ms } from '../../../src/lib/stage/thresholds';

describe('restingTouch', () => {
	it('lets a slow finger press, and refuses one that leans', () => {
		const touch = restingTouch();
		touch.down(1, 0);
		touch.up(1, LEANING_ms);
		expect(touch.refuses(1)).toBe(false);
		touch.down(2, 10_000);
		touch.up(2, 10_000 + LEANING_ms + 1);
		expect(touch.refuses(2)).toBe(true);
		// once: the next tap of a finger with that number counts
		expect(touch.refuses(2)).toBe(false);
	});

	it('holds as long as a tooth does before it takes a touch for a resting one', () => {
		expect(LEANING_ms).toBe(REST_ms);
	});

	it('refuses every one of many at the same time, until all have lifted', () => {
		const touch = restingTouch();
		for (let id = 0; id < MOST_TOUCHES; id += 1) touch.down(id, 0);
		touch.up(0, 100);
		expect(touch.refuses(0)).toBe(false);
		touch.down(20, 100);
		touch.down(21, 100);
		for (const id of [1, 2, 3, 20, 21]) {
			touch.up(id, 200);
			expect(touch.refuses(id), String(id)).toBe(true);
		}
		for (let id = 4; id < MOST_TOUCHES; id += 1) touch.up(id, 300);
		touch.down(30, 400);
		touch.up(30, 500);
		expect(touch.refuses(30)).toBe(false);
	});

	it('forgets fingers whose lifting was never told: at the next first finger, or after a minute', () => {
		const touch = restingTouch();
		for (let id = 0; id < 20; id += 1) touch.down(id, 0);
		touch.down(30, 100);
		touch.up(30, 200);
		expect(touch.refuses(30)).toBe(true);
		touch.down(31, 300, true);
		touch.up(31, 400);
		expect(touch.refuses(31)).toBe(false);

		for (let id = 40; id < 60; id += 1) touch.down(id, 1_000);
		touch.down(70, 1_000 + FORGOTTEN_ms + 1);
		touch.up(70, 1_100 + FORGOTTEN_ms);
		expect(touch.refuses(70)).toBe(false);
	});

	it('knows nothing of what it has not seen come down', () => {
		const touch = restingTouch();
		touch.up(7, 99_999);
		expect(touch.refuses(7)).toBe(false);
		expect(touch.refuses(-1)).toBe(false);
	});
});
