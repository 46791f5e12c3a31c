import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { ROOT } from '../../src/scripts/setup.mjs';
import { bigScan } from './bigScan';

export interface BenchRow {
	what: string;
	measured: string;
	goal: string;
	beside: string;
}

interface Prepared {
	whole_ms: number;
	stages_ms: Record<string, number>;
	peak_bytes: number;
	triangles: number;
}

interface Naive {
	read_ms: number;
	ray_ms: number;
	light_ms: number;
	peak_bytes: number;
}

const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`;
const gigabytes = (bytes: number) => `${(bytes / 1e9).toFixed(2)} GB`;

/**
 * A scan of 1,000,000 triangles (binary STL, 50 MB) through the job that prepares every shape, in a process of its own:
 * read, measured, simplified, light baked, GLB, picture and drawing written. Beside it a naive pass over the same file.
 */
export async function benchScan(): Promise<BenchRow[]> {
	const folder = await mkdtemp(path.join(os.tmpdir(), 'tooth-table-scan-'));
	try {
		const file = path.join(folder, 'scan.stl');
		await writeFile(file, bigScan());
		const ours = await inProcess<Prepared>('scanJob.ts', file, path.join(folder, 'data'));
		const naive = await inProcess<Naive>('naiveScan.ts', file);
		const stages = Object.entries(ours.stages_ms)
			.map(([stage, ms]) => `${stage} ${seconds(ms)}`)
			.join(', ');
		return [
			{
				what: `Scan of ${ours.triangles.toLocaleString('en')} triangles: read, measured, simplified, baked`,
				measured: `${seconds(ours.whole_ms - (ours.stages_ms.writing ?? 0))} (${stages})`,
				goal: 'under 5 s',
				beside: `${seconds(ours.whole_ms)} with GLB, picture and drawing written; naive: ${seconds(naive.read_ms)} to read with normals, then ${Math.round(naive.light_ms / 3_600_000)} h for light by rays against every triangle (extrapolated from 12 rays of ${Math.round(naive.ray_ms)} ms)`,
			},
			{
				what: 'The same: peak memory of the process, Node and its loader included',
				measured: gigabytes(ours.peak_bytes),
				goal: 'under 1.5 GB',
				beside: `naive: ${gigabytes(naive.peak_bytes)}`,
			},
		];
	} finally {
		await rm(folder, { recursive: true, force: true });
	}
}

async function inProcess<T>(script: string, ...args: string[]): Promise<T> {
	const { stdout } = await promisify(execFile)(
		process.execPath,
		['--import', 'tsx', path.join(ROOT, 'test/bench', script), ...args],
		{ cwd: ROOT, maxBuffer: 1e7 },
	);
	return JSON.parse(stdout) as T;
}
