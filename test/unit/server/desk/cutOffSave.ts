/**
 * A save in a process of its own that stops at a named point and stays there until it is killed:
 * `cutOffSave CONTENT_DIR DATA_DIR POINT NTH CHANGES`. It writes "stopped" when it has.
 */
import { deskFiles } from '../../../../src/lib/server/desk/deskFiles';

const [contentDir, dataDir, point, nth, changes] = process.argv.slice(2);
let seen = 0;
const desk = deskFiles({
	contentDir,
	dataDir,
	now: () => Date.UTC(2026, 11, 1, 12),
	logger: { info: () => undefined, warn: () => undefined },
	at: async (now) => {
		if (now !== point || ++seen < Number(nth)) return;
		process.stdout.write('stopped\n');
		setInterval(() => undefined, 1_000);
		await new Promise(() => undefined);
	},
});
const saved = await desk.save({ changes: JSON.parse(changes), by: 'desk', what: { code: 'edited' } });
process.stdout.write(`${JSON.stringify(saved)}\n`);
