import { describe, expect, it } from 'vitest';
import { Comfort, gainAt, LOUDEST, TEXT_SCALE } from '../../../src/lib/kiosk/comfort.svelte';

function memory(kept: Record<string, string> = {}) {
	return {
		kept,
		getItem: (key: string) => kept[key] ?? null,
		setItem: (key: string, value: string) => void (kept[key] = value),
		removeItem: (key: string) => void delete kept[key],
	};
}
const system = (highContrast = false, reducedMotion = false) => ({
	highContrast: () => highContrast,
	reducedMotion: () => reducedMotion,
});

describe('Comfort', () => {
	it('begins as the system asks, and as usual in everything else', () => {
		const comfort = new Comfort(system(true, true), null);
		expect(comfort.highContrast).toBe(true);
		expect(comfort.reducedMotion).toBe(true);
		expect(comfort.textSize).toBe('usual');
		expect(comfort.lowReach).toBe(false);
		expect(comfort.sound).toBe(true);
	});

	it("sets the visitor's wish above the system's, both ways", () => {
		const comfort = new Comfort(system(false, true), null);
		comfort.reducedMotion = false;
		comfort.highContrast = true;
		expect(comfort.reducedMotion).toBe(false);
		expect(comfort.highContrast).toBe(true);
	});

	it('keeps the choices for the visit and forgets them with a reset', () => {
		const store = memory();
		const first = new Comfort(system(), store);
		first.textSize = 'largest';
		first.lowReach = true;
		first.sound = false;
		first.volume = 5;
		const next = new Comfort(system(), store);
		expect(next.textSize).toBe('largest');
		expect(next.lowReach).toBe(true);
		expect(next.sound).toBe(false);
		expect(next.volume).toBe(5);
		next.open = true;
		next.reset();
		expect(Object.keys(store.kept)).toEqual([]);
		const after = new Comfort(system(), store);
		for (const comfort of [next, after]) {
			expect(comfort.open).toBe(false);
			expect(comfort.textSize).toBe('usual');
			expect(comfort.lowReach).toBe(false);
			expect(comfort.sound).toBe(true);
			expect(comfort.volume).toBe(3);
		}
	});

	it.each(['{"textSize":"huge","volume":99,"sound":"yes","lowReach":1}', 'not json', '[]', '7', 'null'])(
		'takes nothing from a store that holds %s',
		(found) => {
			const comfort = new Comfort(system(), memory({ 'tooth-table-comfort': found }));
			expect(comfort.textSize).toBe('usual');
			expect(comfort.volume).toBe(3);
			expect(comfort.sound).toBe(true);
			expect(comfort.lowReach).toBe(false);
		},
	);

	it('works on where the browser forbids a store', () => {
		const refuse = () => {
			throw new DOMException('refused', 'SecurityError');
		};
		const comfort = new Comfort(system(), { getItem: refuse, setItem: refuse, removeItem: refuse });
		comfort.textSize = 'larger';
		expect(comfort.textSize).toBe('larger');
		comfort.reset();
		expect(comfort.textSize).toBe('usual');
	});

	it('never gets louder than the loudest step nor softer than the first', () => {
		const comfort = new Comfort(system(), null);
		for (let i = 0; i < 9; i += 1) comfort.volume += 1;
		expect(comfort.volume).toBe(LOUDEST);
		expect(comfort.gain).toBe(1);
		for (let i = 0; i < 9; i += 1) comfort.volume -= 1;
		expect(comfort.volume).toBe(1);
		comfort.sound = false;
		expect(comfort.gain).toBe(0);
	});

	it('spans at least 18 dB, as EN 301 549 8.2.1.1 asks of speech', () => {
		expect(20 * Math.log10(gainAt(LOUDEST) / gainAt(1))).toBeGreaterThanOrEqual(18);
	});

	it('goes up to text twice as large, as WCAG 2.2 1.4.4 asks', () => {
		expect(Math.max(...Object.values(TEXT_SCALE))).toBe(2);
	});

	it('knows whether anything has been set on this visit', () => {
		const comfort = new Comfort(system(true, true), memory());
		expect(comfort.untouched).toBe(true);
		comfort.volume += 1;
		expect(comfort.untouched).toBe(false);
		comfort.reset();
		expect(comfort.untouched).toBe(true);
		comfort.reducedMotion = true; // as the system says, but said by the visitor
		expect(comfort.untouched).toBe(false);
		comfort.reset();
		comfort.open = true;
		expect(comfort.untouched).toBe(false);
	});

	it('begins each visit as the screen was set up', () => {
		const set = { lowReach: true, gain: 0.5 };
		const low = { ...system(), lowReach: () => set.lowReach, gain: () => set.gain };
		const comfort = new Comfort(low, memory());
		expect(comfort.lowReach).toBe(true);
		expect(comfort.untouched).toBe(true);
		expect(comfort.gain).toBeCloseTo(0.5 * gainAt(comfort.volume));
		comfort.lowReach = false;
		expect([comfort.lowReach, comfort.untouched]).toEqual([false, false]);
		comfort.lowReach = true;
		expect(comfort.untouched).toBe(true);
		comfort.lowReach = false;
		comfort.reset();
		expect(comfort.lowReach).toBe(true);
		expect(comfort.silent).toBe(false);
		set.gain = 0;
		expect([comfort.silent, comfort.gain]).toEqual([true, 0]);
	});
});
