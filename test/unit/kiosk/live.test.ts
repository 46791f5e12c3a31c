import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { followExhibit, type LiveNews } from '../../../src/lib/kiosk/live';

class FakeEvents extends EventTarget {
	static readonly CONNECTING = 0;
	static readonly OPEN = 1;
	static readonly CLOSED = 2;
	static all: FakeEvents[] = [];
	readyState = FakeEvents.CONNECTING;
	constructor(readonly address: string) {
		super();
		FakeEvents.all.push(this);
	}
	close(): void {
		this.readyState = FakeEvents.CLOSED;
	}
	say(news: LiveNews): void {
		this.dispatchEvent(Object.assign(new Event('exhibit'), { data: JSON.stringify(news) }));
	}
	fail(readyState: number): void {
		this.readyState = readyState;
		this.dispatchEvent(new Event('error'));
	}
}

describe('followExhibit', () => {
	beforeEach(() => {
		vi.useFakeTimers();
		FakeEvents.all = [];
		vi.stubGlobal('EventSource', FakeEvents);
	});
	afterEach(() => {
		vi.useRealTimers();
		vi.unstubAllGlobals();
	});

	it('passes on what the server tells, and whether it is there', () => {
		const told: LiveNews[] = [];
		const live = followExhibit((news) => told.push(news));
		const [events] = FakeEvents.all;
		expect(events.address).toBe('/live');
		expect(live.connected()).toBe(false);
		events.readyState = FakeEvents.OPEN;
		expect(live.connected()).toBe(true);
		const news = { hash: 'h', code: 'c', shapes: ['s'] };
		events.say(news);
		expect(told).toEqual([news]);
		events.fail(FakeEvents.CONNECTING);
		expect(live.connected()).toBe(false);
		expect(vi.getTimerCount()).toBe(0);
		live.stop();
		expect(events.readyState).toBe(FakeEvents.CLOSED);
	});

	it('tries anew where the browser has given up', () => {
		const live = followExhibit(() => undefined);
		FakeEvents.all[0].fail(FakeEvents.CLOSED);
		expect(FakeEvents.all).toHaveLength(1);
		vi.advanceTimersByTime(5_000);
		expect(FakeEvents.all).toHaveLength(2);
		FakeEvents.all[1].fail(FakeEvents.CLOSED);
		live.stop();
		vi.advanceTimersByTime(60_000);
		expect(FakeEvents.all).toHaveLength(2);
	});
});
