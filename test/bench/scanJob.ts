/** In a process of its own: prepares one scan by the job that the exhibit uses, and prints times and peak memory. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { runShapeJob } from '../../src/lib/server/prepare/runShapeJob';

const [path, dataDir] = process.argv.slice(2);
const bytes = readFileSync(path);
const bytesHash = createHash('sha256').update(bytes).digest('hex');
const begun = performance.now();
const stages: [stage: string, at_ms: number][] = [];
const outcome = await runShapeJob(
	{
		hash: bytesHash,
		dataDir,
		source: { kind: 'scan', path, bytesHash, bytes: bytes.length, units: 'mm' },
		preservations: ['tan'],
	},
	(stage) => stages.push([stage, performance.now() - begun]),
);
if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
const whole_ms = performance.now() - begun;
const stages_ms = Object.fromEntries(
	stages.map(([stage, at_ms], i) => [stage, (stages[i + 1]?.[1] ?? whole_ms) - at_ms]),
);
const { triangles, ridgeCount, axialHeight_mm } = outcome.prepared.measures;
console.log(
	JSON.stringify({
		whole_ms,
		stages_ms,
		// kilobytes on every system that Node reports it for
		peak_bytes: process.resourceUsage().maxRSS * 1024,
		triangles,
		ridgeCount,
		axialHeight_mm,
	}),
);
