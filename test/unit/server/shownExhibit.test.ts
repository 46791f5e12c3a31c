import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createExhibitStore, type ExhibitStore } from '../../../src/lib/server/exhibitStore';
import { countingPreparer, putContent, putSpecimen, quiet } from './contentFolder';
import { put, scratchFolder } from './samples';

const stores: ExhibitStore[] = [];
afterEach(async () => {
	vi.useRealTimers();
	await Promise.all(stores.splice(0).map((store) => store.close()));
});

const SHOWN = 'rooms: [{ room: compare, show: { until: 2027-03-27 } }, quiz]\ntime_zone: Europe/London';

/** A folder in which b is a draft and c is shown from December to the last day of winter time. */
async function folders(): Promise<{ contentDir: string; dataDir: string }> {
	const contentDir = await scratchFolder();
	await putContent(contentDir);
	await putSpecimen(contentDir, 'c', 'Third tooth');
	const edit = async (path: string, change: (text: string) => string) =>
		put(contentDir, path, change(await readFile(join(contentDir, path), 'utf8')));
	await edit('specimens/b/specimen.yaml', (text) => `status: draft\n${text}`);
	await edit('specimens/c/specimen.yaml', (text) => `show: { from: 2026-12-01, until: 2027-03-27 }\n${text}`);
	await edit('exhibit.yaml', (text) => text.replace('rooms: [compare]', SHOWN));
	return { contentDir, dataDir: await scratchFolder() };
}

function open(at: { contentDir: string; dataDir: string }, now: () => number): ExhibitStore {
	const { prepare } = countingPreparer();
	const store = createExhibitStore({ ...at, logger: quiet, watch: false, prepare, now });
	stores.push(store);
	return store;
}

const shown = (store: ExhibitStore) => store.current()?.specimens.map(({ id }) => id);

describe('what is shown on a day', () => {
	it('keeps drafts and what is out of its time to staff, and out of the snapshot', async () => {
		const at = await folders();
		const store = open(at, () => Date.parse('2026-11-30T12:00:00Z'));
		await store.ready;
		await store.settled();
		expect(shown(store)).toEqual(['a']);
		expect(store.current()?.rooms).toEqual(['compare', 'quiz']);
		expect(store.everything()?.specimens.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
		const snapshot = await readFile(join(at.dataDir, 'snapshot.json'), 'utf8');
		expect(snapshot).not.toContain('Second tooth');
		expect(snapshot).not.toContain('Third tooth');
	});

	it('changes by itself when a day begins, and when the clock jumps either way', async () => {
		let now = Date.parse('2026-11-30T23:59:50Z');
		const at = await folders();
		vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
		const other = open(at, () => now);
		await other.ready;
		await other.settled();
		expect(shown(other)).toEqual(['a']);
		const look = async () => {
			await vi.advanceTimersByTimeAsync(5_000);
			await other.settled();
			return shown(other);
		};
		now = Date.parse('2026-11-30T23:59:59Z');
		expect(await look()).toEqual(['a']);
		now = Date.parse('2026-12-01T00:00:04Z');
		expect(await look()).toEqual(['a', 'c']);
		// on 28 March 2027 London puts its clocks forward: its 27th ends at midnight UTC, its 28th at 23:00
		now = Date.parse('2027-03-27T23:59:59Z');
		expect(await look()).toEqual(['a', 'c']);
		expect(other.current()?.rooms).toEqual(['compare', 'quiz']);
		now = Date.parse('2027-03-28T00:00:00Z');
		expect(await look()).toEqual(['a']);
		expect(other.current()?.rooms).toEqual(['quiz']);
		expect(other.problems().map(({ id }) => id)).toEqual(['show-is-over', 'show-is-over']);
		now = Date.parse('2027-01-15T12:00:00Z');
		expect(await look()).toEqual(['a', 'c']);
		expect(other.current()?.rooms).toEqual(['compare', 'quiz']);
	});

	it('looks at the calendar again before a snapshot is shown', async () => {
		const at = await folders();
		const first = open(at, () => Date.parse('2027-01-15T12:00:00Z'));
		await first.ready;
		await first.settled();
		expect(shown(first)).toEqual(['a', 'c']);
		await first.close();
		const second = open(at, () => Date.parse('2027-04-15T12:00:00Z'));
		const seen: unknown[] = [];
		second.subscribe(() => seen.push(shown(second)));
		await second.ready;
		await second.settled();
		expect(seen.every((ids) => JSON.stringify(ids) === '["a"]')).toBe(true);
		expect(shown(second)).toEqual(['a']);
	});
});
