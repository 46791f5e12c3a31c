import { join } from 'node:path';
import type { DeskFs } from './deskFs';

/** As `temporaryName` makes them. */
const TEMPORARY = /^\..+\.(\d+)\.[0-9a-f]{12}\.tmp$/;

/** Takes away what processes that are no more left behind half written. */
export async function sweepTemporary(fs: DeskFs, folder: string): Promise<void> {
	for (const entry of await fs.readdir(folder, { withFileTypes: true }).catch(() => [])) {
		const path = join(folder, entry.name);
		if (entry.isDirectory()) await sweepTemporary(fs, path);
		const process_ = TEMPORARY.exec(entry.name)?.[1];
		if (entry.isFile() && process_ && !isAlive(Number(process_))) await fs.rm(path, { force: true });
	}
}

function isAlive(pid: number): boolean {
	// a number of our own from before this start
	if (pid === process.pid) return false;
	try {
		process.kill(pid, 0);
		return true;
	} catch (cause) {
		return (cause as NodeJS.ErrnoException).code === 'EPERM';
	}
}
