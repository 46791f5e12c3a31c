// Adds batches of three for as long as it lives and says "kept" after each that was confirmed.
import { sqliteCounts } from '../../../src/lib/server/counts/sqliteCounts';

const store = sqliteCounts(process.argv[2]);
const entry = { kind: 'quiz-answer' as const, facts: { question: 'q' } };
for (let batch = 0; ; batch += 1) {
	await store.add(`b${batch}`, '2026-11-25', [entry, entry, entry]);
	process.stdout.write('kept\n');
	await new Promise((resolve) => setImmediate(resolve));
}
