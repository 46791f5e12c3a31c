import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CountsStore } from '../../../src/lib/server/counts/countsStore';
import { sqliteCounts } from '../../../src/lib/server/counts/sqliteCounts';
import { POST } from '../../../src/routes/quiz/counts/+server';

const KEY = Symbol.for('tooth-table.counts');
const shared = globalThis as { [KEY]?: CountsStore | null };
const folder = mkdtempSync(path.join(tmpdir(), 'endpoint-'));
let store: CountsStore;
beforeAll(() => {
	store = sqliteCounts(path.join(folder, 'counts.db'));
	shared[KEY] = store;
});
afterAll(async () => {
	delete shared[KEY];
	await store.close();
	rmSync(folder, { recursive: true, force: true });
});

const HOST = 'table.example:4173';
const answer = { question: 'choose-size-most-a', option: 'b', right: true, hinted: false, band: '5-7' };
const body = () => ({ batch: crypto.randomUUID(), answers: [answer], takers: [], rounds: [] });
async function post(sent: unknown, headers: Record<string, string> = { origin: `http://${HOST}` }) {
	const request = new Request(`http://${HOST}/quiz/counts`, {
		method: 'POST',
		body: typeof sent === 'string' ? sent : JSON.stringify(sent),
		headers: { host: HOST, 'content-type': 'application/json', ...headers },
	});
	const answered = await POST({ request } as Parameters<typeof POST>[0]);
	expect(await answered.text()).toBe('');
	expect(answered.headers.get('cache-control')).toBe('no-store');
	return answered.status;
}
const counted = async () => (await store.tallies('quiz-answer')).reduce((sum, { count }) => sum + count, 0);

describe('/quiz/counts', () => {
	it('204 when the counts are on the disk; the same sending again counts nothing', async () => {
		const once = body();
		expect(await post(once)).toBe(204);
		expect(await post(once)).toBe(204);
		expect(await counted()).toBe(1);
	});

	it('403 for a page of another site, or for nobody', async () => {
		expect(await post(body(), { origin: 'https://elsewhere.example' })).toBe(403);
		expect(await post(body(), { origin: 'null' })).toBe(403);
		expect(await post(body(), {})).toBe(403);
		expect(await counted()).toBe(1);
	});

	it('413 for what is too long, 400 for what is no count', async () => {
		expect(await post({ ...body(), more: 'x'.repeat(40_000) })).toBe(413);
		for (const bad of [
			'',
			'{',
			'[]',
			'null',
			JSON.stringify({ ...body(), answers: [{ ...answer, who: 'me' }] }),
		])
			expect(await post(bad), bad).toBe(400);
		expect(await counted()).toBe(1);
	});

	it('503 when the store fails, so that the screen tries again; 204 where nothing can be kept', async () => {
		shared[KEY] = { ...store, add: () => Promise.reject(new Error('disk full')) };
		expect(await post(body())).toBe(503);
		shared[KEY] = null;
		expect(await post(body())).toBe(204);
		shared[KEY] = store;
		expect(await counted()).toBe(1);
	});

	// last: what it sends blocks the others for a minute
	it('429 when more comes than a gallery could send', async () => {
		const statuses = new Set<number>();
		for (let i = 0; i < 1600 && !statuses.has(429); i += 1) statuses.add(await post('{'));
		expect([...statuses].sort()).toEqual([400, 429]);
		expect(await post(body())).toBe(429);
		expect(await counted()).toBe(1);
	});
});
