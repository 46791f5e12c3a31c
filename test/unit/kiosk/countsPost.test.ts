import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { CountsPost, MOST_WAITING } from '../../../src/lib/kiosk/countsPost';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A server that answers with these statuses in turn; 0 = nobody answers. */
function server(...statuses: number[]) {
	const got: string[] = [];
	const send = (body: string): Promise<number> => {
		got.push((JSON.parse(body) as { batch: string }).batch);
		const status = statuses.shift() ?? 204;
		return status === 0 ? Promise.reject(new Error('nobody there')) : Promise.resolve(status);
	};
	return { got, send };
}

it('sends what it was given under its name, once', async () => {
	const { got, send } = server();
	const post = new CountsPost(send);
	post.add({ answers: [] }, 'one');
	await vi.advanceTimersByTimeAsync(60_000);
	expect(got).toEqual(['one']);
	expect(post.waiting).toBe(0);
});

it('tries again, under the same name, until somebody confirms; what waits keeps its order', async () => {
	const { got, send } = server(0, 503, 429, 204, 204);
	const post = new CountsPost(send);
	post.add({}, 'one');
	await vi.advanceTimersByTimeAsync(0);
	post.add({}, 'two');
	await vi.advanceTimersByTimeAsync(0);
	expect(post.waiting).toBe(2);
	await vi.advanceTimersByTimeAsync(30_000);
	expect(got).toEqual(['one', 'one', 'one', 'one', 'two']);
	expect(post.waiting).toBe(0);
	await vi.advanceTimersByTimeAsync(60_000);
	expect(got).toHaveLength(5);
});

it('what the server will never take is not sent again', async () => {
	for (const status of [400, 403, 413]) {
		const { got, send } = server(status);
		const post = new CountsPost(send);
		post.add({}, 'bad');
		post.add({}, 'good');
		await vi.advanceTimersByTimeAsync(60_000);
		expect(got).toEqual(['bad', 'good']);
	}
});

it('does not hammer a server that is away: once in five seconds, however much is added', async () => {
	const { got, send } = server(...Array<number>(100).fill(0));
	const post = new CountsPost(send);
	for (let i = 0; i < 20; i += 1) {
		post.add({}, `b${i}`);
		await vi.advanceTimersByTimeAsync(100);
	}
	expect(got.length).toBe(1);
	await vi.advanceTimersByTimeAsync(20_000);
	expect(got.length).toBeLessThanOrEqual(6);
	post.stop();
	const sent = got.length;
	await vi.advanceTimersByTimeAsync(60_000);
	expect(got).toHaveLength(sent);
});

it('keeps so many at most, the newest; what is on its way still ends', async () => {
	const { got, send } = server(0);
	const post = new CountsPost(send);
	for (let i = 0; i < MOST_WAITING + 40; i += 1) post.add({}, `b${i}`);
	expect(post.waiting).toBe(MOST_WAITING);
	await vi.advanceTimersByTimeAsync(60_000);
	expect(post.waiting).toBe(0);
	expect(got.slice(0, 2)).toEqual(['b0', 'b40']);
	expect(got).toHaveLength(MOST_WAITING + 1);
});

it('what a page leaves behind is what it would have sent, under the same names', () => {
	const post = new CountsPost(() => new Promise(() => undefined));
	post.add({ rooms: [] }, 'one');
	post.add({}, 'two');
	expect(post.bodies.map((body) => JSON.parse(body) as unknown)).toEqual([
		{ batch: 'one', rooms: [] },
		{ batch: 'two' },
	]);
});
