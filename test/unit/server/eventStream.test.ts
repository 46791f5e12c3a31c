import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Exhibit } from '../../../src/lib/content/exhibit';
import { eventStream } from '../../../src/lib/server/eventStream';
import { exhibit } from './samples';

function fakeStore(current: Exhibit | null) {
	const listeners = new Set<(event: { hash: string }) => void>();
	let shown = current;
	const closing = new AbortController();
	return {
		listeners,
		change(exhibit: Exhibit) {
			shown = exhibit;
			for (const listener of listeners) listener({ hash: exhibit.hash });
		},
		closer: closing,
		store: {
			closing: closing.signal,
			current: () => shown,
			subscribe(listener: (event: { hash: string }) => void) {
				listeners.add(listener);
				return () => void listeners.delete(listener);
			},
		},
	};
}

const textOf = (chunk: { value?: Uint8Array }): string => new TextDecoder().decode(chunk.value);

describe('eventStream', () => {
	beforeEach(() => void vi.useFakeTimers());
	afterEach(() => void vi.useRealTimers());

	it('tells hash, program and shapes at once and at each change, and lets go when the reader leaves', async () => {
		const now = exhibit();
		const { store, listeners, change } = fakeStore(now);
		const shapes = now.specimens.map(({ prepared }) => prepared.hash);
		expect(shapes).not.toEqual([]);
		const news = (hash: string) =>
			`event: exhibit\ndata: ${JSON.stringify({ hash, code: 'v1', shapes: [...new Set(shapes)] })}\n\n`;
		const reader = eventStream(store, 'v1').getReader();
		expect(textOf(await reader.read())).toBe('retry: 2000\n\n');
		expect(textOf(await reader.read())).toBe(news(now.hash));
		change({ ...now, hash: 'abc' });
		expect(textOf(await reader.read())).toBe(news('abc'));
		expect(vi.getTimerCount()).toBe(1);
		await reader.cancel();
		expect(listeners.size).toBe(0);
		expect(vi.getTimerCount()).toBe(0);
	});

	it('sends a comment every 15 s', async () => {
		const { store } = fakeStore(null);
		const reader = eventStream(store, 'v1').getReader();
		await reader.read();
		vi.advanceTimersByTime(15_000);
		expect(textOf(await reader.read())).toBe(': ping\n\n');
		await reader.cancel();
	});

	it('ends when the store closes', async () => {
		const { store, closer, listeners } = fakeStore(null);
		const reader = eventStream(store, 'v1').getReader();
		await reader.read();
		closer.abort();
		expect((await reader.read()).done).toBe(true);
		expect(listeners.size).toBe(0);
		expect(vi.getTimerCount()).toBe(0);
	});
});
