import { describe, expect, it } from 'vitest';
import type { ReportStage, ShapeJob, ShapeOutcome } from '../../../src/lib/server/prepare/shapeJob';
import { createShapeKeeper } from '../../../src/lib/server/shapeKeeper';
import { quiet } from './contentFolder';
import { hashOf, prepared } from './samples';

/** A scan in STL: 50 bytes a triangle, 400 bytes of memory for each and 150 MB besides (prepare/jobSize.ts). */
const scan = (name: string, triangles: number): ShapeJob => ({
	hash: hashOf(name),
	dataDir: '/nowhere',
	source: { kind: 'scan', path: `/${name}.stl`, bytesHash: name, bytes: triangles * 50, units: 'mm' },
	specimen: name,
	preservations: ['tan'],
});

/** Stands for the real preparer: each job waits until it is told to end. */
function held() {
	const begun = new Map<string, { report: ReportStage; end: () => void }>();
	const prepare = (job: ShapeJob, report: ReportStage): Promise<ShapeOutcome> =>
		new Promise((resolve) => {
			report('reading');
			begun.set(job.specimen!, { report, end: () => resolve({ ok: true, prepared: prepared(job.hash) }) });
		});
	return { begun, prepare };
}

const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('shapeKeeper', () => {
	it('prepares several scans at once only while their memory stays under the limit, in turn', async () => {
		const { begun, prepare } = held();
		const keeper = createShapeKeeper({
			dataDir: '/nowhere',
			prepare,
			logger: quiet,
			onDone: () => undefined,
		});
		// 450, 450 and 450 MB, then one of 1.35 GB, then a small one
		for (const name of ['a', 'b', 'c']) keeper.request(scan(name, 750_000));
		keeper.request(scan('huge', 3_000_000));
		keeper.request(scan('small', 1_000));
		await settle();
		expect([...begun.keys()]).toEqual(['a', 'b']);
		begun.get('a')!.end();
		await settle();
		expect([...begun.keys()]).toEqual(['a', 'b', 'c']);
		begun.get('b')!.end();
		await settle();
		// the huge one waits for all the others, and the small one does not slip past it
		expect(begun.has('huge')).toBe(false);
		expect(begun.has('small')).toBe(false);
		begun.get('c')!.end();
		await settle();
		expect([...begun.keys()]).toEqual(['a', 'b', 'c', 'huge']);
		begun.get('huge')!.end();
		await settle();
		begun.get('small')!.end();
		await keeper.settled();
		expect(keeper.progress()).toEqual({ done: 5, total: 5, current: [], remaining_s: 0 });
	});

	it('tells what is at work in which stage, and how long it may take by what took time before', async () => {
		const { begun, prepare } = held();
		let now = 0;
		const keeper = createShapeKeeper({
			dataDir: '/nowhere',
			prepare,
			logger: quiet,
			onDone: () => undefined,
			now_ms: () => now,
		});
		keeper.request(scan('a', 750_000));
		keeper.request(scan('b', 750_000));
		keeper.request(scan('c', 1_500_000));
		await settle();
		expect(keeper.progress()).toEqual({
			done: 0,
			total: 3,
			current: [
				{ specimen: 'a', stage: 'reading', fraction: 0 },
				{ specimen: 'b', stage: 'reading', fraction: 0 },
			],
			remaining_s: null, // nothing has been timed yet
		});
		now = 1_000;
		begun.get('a')!.report('baking');
		expect(keeper.progress().current[0]).toEqual({ specimen: 'a', stage: 'baking', fraction: 0.45 });
		now = 4_000;
		begun.get('a')!.end();
		begun.get('b')!.end();
		await settle();
		// 4 s for 750,000 triangles, so 8 s for twice as many
		expect(keeper.progress()).toMatchObject({ done: 2, total: 3, remaining_s: 8 });
		now = 7_000;
		expect(keeper.progress().remaining_s).toBe(5);
		begun.get('c')!.report('writing');
		expect(keeper.progress().remaining_s).toBe(4); // writing is the last two fifths
		now = 60_000;
		expect(keeper.progress().remaining_s).toBe(1); // never none while it is at work
		begun.get('c')!.end();
		await keeper.settled();
		expect(keeper.progress().remaining_s).toBe(0);
	});

	it('keeps going when a job throws', async () => {
		const keeper = createShapeKeeper({
			dataDir: '/nowhere',
			prepare: () => Promise.reject(new Error('out of memory')),
			logger: quiet,
			onDone: () => undefined,
		});
		keeper.request(scan('a', 3_000_000));
		keeper.request(scan('b', 3_000_000));
		await keeper.settled();
		expect(keeper.state(hashOf('b'), 'tan')).toEqual({
			is: 'failed',
			failure: { of: 'crash', message: 'Error: out of memory' },
		});
	});
});
