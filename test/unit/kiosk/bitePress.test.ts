import { afterEach, beforeEach, describe, expect, it, vi, type MockInstance } from 'vitest';
import { BitePress } from '../../../src/lib/kiosk/feeding/bitePress.svelte';

let frames: (() => void)[] = [];
let clock = 0;
let now: MockInstance<() => number>;
beforeEach(() => {
	frames = [];
	clock = 1000;
	now = vi.spyOn(performance, 'now').mockImplementation(() => clock);
	vi.stubGlobal('requestAnimationFrame', (step: () => void) => frames.push(step));
	vi.stubGlobal('cancelAnimationFrame', () => (frames = []));
});
afterEach(() => {
	now.mockRestore();
	vi.unstubAllGlobals();
});
/** Lets time pass, a frame every 16 ms. */
const pass = (ms: number) => {
	for (let t = 0; t < ms; t += 16) {
		clock += 16;
		for (const step of frames.splice(0)) step();
	}
};

describe('bitePress', () => {
	it('goes on while it is pressed, stops when let go, and goes on from there', () => {
		const press = new BitePress(() => false);
		press.start();
		pass(800);
		const first = press.share;
		expect(first).toBeGreaterThan(0.2);
		expect(first).toBeLessThan(0.3);
		press.stop();
		pass(800);
		expect(press.share).toBe(first);
		press.start();
		pass(400);
		expect(press.share).toBeGreaterThan(first);
	});

	it('ends by itself within five seconds, at its limit, and starts anew after that', () => {
		const press = new BitePress(() => false);
		press.start(0.5);
		pass(5000);
		expect(press.share).toBe(0.5);
		expect(press.pressing).toBe(false);
		expect(press.done).toBe(true);
		press.start(0.5);
		expect(press.share).toBe(0);
		pass(160);
		expect(press.share).toBeGreaterThan(0);
		expect(press.share).toBeLessThan(0.1);
	});

	it('goes straight to the end where motion is unwanted', () => {
		const press = new BitePress(() => true);
		press.start(0.7);
		expect(press.share).toBe(0.7);
		expect(press.pressing).toBe(false);
	});

	it('comes out again', () => {
		const press = new BitePress(() => false);
		press.start();
		pass(500);
		press.reset();
		expect(press.share).toBe(0);
		pass(500);
		expect(press.share).toBe(0);
	});
});
