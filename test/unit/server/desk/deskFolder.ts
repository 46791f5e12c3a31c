import { createHash } from 'node:crypto';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { deskFiles, type DeskFiles, type DeskFilesOptions } from '../../../../src/lib/server/desk/deskFiles';
import type { FileChange } from '../../../../src/lib/content/deskFiles';
import { putContent, quiet } from '../contentFolder';
import { scratchFolder } from '../samples';

export const LABEL = 'specimens/a/label.en.md';
export const FACTS = 'specimens/a/specimen.yaml';
export const hash = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');

export interface Desk {
	contentDir: string;
	dataDir: string;
	desk: DeskFiles;
	/** moves the desk's clock on */
	later(ms: number): void;
	/** the same folders as after a new start */
	again(options?: Partial<DeskFilesOptions>): DeskFiles;
	read(path: string): Promise<string>;
	write(path: string, text: string): Promise<void>;
	/** a change of a file from what it holds now */
	change(path: string, text: string | null): Promise<FileChange>;
	/** names of hidden files anywhere in the content folder */
	hidden(): Promise<string[]>;
}

/** A small exhibit and a desk on it; the clock stands at noon of the first of December 2026, UTC. */
export async function deskFolder(options: Partial<DeskFilesOptions> = {}): Promise<Desk> {
	const contentDir = await scratchFolder();
	const dataDir = await scratchFolder();
	await putContent(contentDir);
	let clock = Date.UTC(2026, 11, 1, 12);
	const make = (some: Partial<DeskFilesOptions> = {}) =>
		deskFiles({ contentDir, dataDir, now: () => clock++, logger: quiet, ...some });
	const read = (path: string): Promise<string> => readFile(join(contentDir, path), 'utf8');
	return {
		contentDir,
		dataDir,
		desk: make(options),
		later: (ms) => (clock += ms),
		again: make,
		read,
		write: (path, text) => writeFile(join(contentDir, path), text),
		async change(path, text) {
			const found = await readFile(join(contentDir, path)).catch(() => null);
			return { path, text, base: found && hash(found) };
		},
		async hidden() {
			const names = await readdir(contentDir, { recursive: true });
			return names.filter((name) => name.split('/').some((step) => step.startsWith('.')));
		},
	};
}

/** A desk on a folder that is there already; what it keeps goes into a folder of its own. */
export const deskOn = async (contentDir: string): Promise<DeskFiles> =>
	deskFiles({ contentDir, dataDir: await scratchFolder(), now: Date.now, logger: quiet });
