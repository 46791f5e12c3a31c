import { stat, statfs } from 'node:fs/promises';
import { join } from 'node:path';
import { monitorEventLoopDelay, type IntervalHistogram } from 'node:perf_hooks';

/** How this server's machine bears its work, in numbers. */
export interface MachineState {
	node: string;
	memory: { rss_MB: number; heap_MB: number };
	/** how late the server is with what it has to do, over the last one to two minutes; null in its first seconds */
	event_loop_ms: { mean: number; p99: number } | null;
	/** null where the folder cannot be asked */
	disk: { data_free_MB: number | null; content_free_MB: number | null };
	/** ISO 8601, UTC: when what is shown was last changed; null where nobody knows */
	content_changed: string | null;
}

const WINDOW_ms = 60_000;
const KEY = Symbol.for('tooth-table.event-loop');

interface Loop {
	now: IntervalHistogram;
	before: { mean: number; p99: number } | null;
}

const MB = 1e6;
const round = (value: number): number => Math.round(value * 10) / 10;

export async function machineState(folders: { dataDir: string; contentDir: string }): Promise<MachineState> {
	const { rss, heapUsed } = process.memoryUsage();
	const [data, content, changed] = await Promise.all([
		freeMB(folders.dataDir),
		freeMB(folders.contentDir),
		// written when what is shown has changed, and at no other time
		stat(join(folders.dataDir, 'snapshot.json')).catch(() => null),
	]);
	return {
		node: process.version,
		memory: { rss_MB: Math.round(rss / MB), heap_MB: Math.round(heapUsed / MB) },
		event_loop_ms: loopDelay(),
		disk: { data_free_MB: data, content_free_MB: content },
		content_changed: changed?.mtime.toISOString() ?? null,
	};
}

async function freeMB(folder: string): Promise<number | null> {
	try {
		const { bavail, bsize } = await statfs(folder);
		return Math.round((bavail * bsize) / MB);
	} catch {
		return null;
	}
}

/** From the first call on it is measured. */
function loopDelay(): MachineState['event_loop_ms'] {
	const shared = globalThis as { [KEY]?: Loop };
	let loop = shared[KEY];
	if (!loop) {
		const now = monitorEventLoopDelay({ resolution: 20 });
		now.enable();
		loop = shared[KEY] = { now, before: null };
		const kept = loop;
		setInterval(() => {
			kept.before = read(now);
			now.reset();
		}, WINDOW_ms).unref();
	}
	const present = read(loop.now);
	if (!present || !loop.before) return present ?? loop.before;
	return { mean: present.mean, p99: Math.max(present.p99, loop.before.p99) };
}

/** The resolution itself is no delay. */
function read(histogram: IntervalHistogram): { mean: number; p99: number } | null {
	if (histogram.count === 0 || !Number.isFinite(histogram.mean)) return null;
	const late = (ns: number) => round(Math.max(0, ns / 1e6 - 20));
	return { mean: late(histogram.mean), p99: late(histogram.percentile(99)) };
}
