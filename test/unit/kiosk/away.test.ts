import { describe, expect, it } from 'vitest';
import { Away } from '../../../src/lib/kiosk/away.svelte';

function place(there: boolean) {
	const state = { there, ticks: new Set<() => void>() };
	const away = new Away({
		there: () => Promise.resolve(state.there),
		every(_period, call) {
			state.ticks.add(call);
			return () => void state.ticks.delete(call);
		},
	});
	const tick = async () => {
		for (const call of [...state.ticks]) call();
		await Promise.resolve();
		await Promise.resolve();
	};
	return { away, state, tick };
}

describe('Away', () => {
	it('goes at once where the server is there', async () => {
		const { away, state } = place(true);
		let gone = 0;
		await away.go(() => (gone += 1));
		expect([gone, away.waiting, state.ticks.size]).toEqual([1, false, 0]);
	});

	it('waits, and goes once when the server is back', async () => {
		const { away, state, tick } = place(false);
		let gone = 0;
		await away.go(() => (gone += 1));
		await tick();
		expect([gone, away.waiting]).toEqual([0, true]);
		state.there = true;
		await tick();
		await tick();
		expect([gone, away.waiting, state.ticks.size]).toEqual([1, false, 0]);
	});

	it('lets the visitor stay, and the last wish count', async () => {
		const { away, state, tick } = place(false);
		const gone: string[] = [];
		await away.go(() => gone.push('first'));
		await away.go(() => gone.push('second'));
		expect(state.ticks.size).toBe(1);
		away.stay();
		expect(away.waiting).toBe(false);
		state.there = true;
		await tick();
		expect(gone).toEqual([]);
		await away.go(() => gone.push('third'));
		expect(gone).toEqual(['third']);
	});
});
