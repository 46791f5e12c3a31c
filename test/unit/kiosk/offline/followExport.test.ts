import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { followExport, type FollowTools } from '../../../../src/lib/kiosk/offline/followExport';

const here = { exhibit: 'e1', code: 'c1' };

describe('followExport', () => {
	beforeEach(() => {
		vi.useFakeTimers();
		vi.stubGlobal('window', new EventTarget());
	});
	afterEach(() => {
		vi.useRealTimers();
		vi.unstubAllGlobals();
	});
	function follow(tools: Partial<FollowTools>) {
		const told: boolean[] = [];
		const stop = followExport({
			shown: () => here,
			list: () => Promise.resolve(here),
			worker: () => Promise.resolve(null),
			onNewer: (newer) => told.push(newer),
			...tools,
		});
		return { told, stop };
	}
	const settle = () => vi.advanceTimersByTimeAsync(0);

	it('looks at once, every minute and when the network is back', async () => {
		let now = here;
		const { told, stop } = follow({ list: () => Promise.resolve(now) });
		await settle();
		expect(told).toEqual([false]);
		now = { ...here, exhibit: 'e2' };
		await vi.advanceTimersByTimeAsync(60_000);
		expect(told).toEqual([false, true]);
		now = { ...here, code: 'c2' };
		window.dispatchEvent(new Event('online'));
		await settle();
		expect(told).toEqual([false, true, true]);
		stop();
		window.dispatchEvent(new Event('online'));
		await vi.advanceTimersByTimeAsync(120_000);
		expect(told).toHaveLength(3);
		expect(vi.getTimerCount()).toBe(0);
	});

	it('believes the service worker, which tells of a version only when it is here whole', async () => {
		let kept: typeof here | null = null;
		const { told } = follow({
			list: () => Promise.resolve({ ...here, exhibit: 'e2' }),
			worker: () => Promise.resolve({ keep: () => Promise.resolve(kept) }),
		});
		await settle();
		expect(told).toEqual([]);
		kept = { ...here, exhibit: 'e2' };
		await vi.advanceTimersByTimeAsync(60_000);
		expect(told).toEqual([true]);
	});

	it('says nothing while nothing can be reached', async () => {
		const { told } = follow({ list: () => Promise.reject(new TypeError('Failed to fetch')) });
		await vi.advanceTimersByTimeAsync(180_000);
		expect(told).toEqual([]);
	});
});
