import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { beforeAll, describe, expect, it } from 'vitest';
import { label } from '../contentFolder';
import { deskFolder, LABEL, type Desk } from './deskFolder';

const OTHER = 'specimens/b/label.en.md';

let program = '';
beforeAll(async () => {
	const outDir = await mkdtemp(join(tmpdir(), 'cut-off-save-'));
	// one file, so that it starts quickly
	await build({
		configFile: false,
		logLevel: 'silent',
		ssr: { noExternal: true },
		build: {
			ssr: join(import.meta.dirname, 'cutOffSave.ts'),
			outDir,
			rollupOptions: { output: { entryFileNames: 'save.mjs' } },
		},
	});
	program = join(outDir, 'save.mjs');
	return () => rm(outDir, { recursive: true, force: true });
});

/** Starts a save, waits until it stands at a point, and kills it there as a power cut would. */
async function killedAt(desk: Desk, point: string, nth: number): Promise<void> {
	const changes = [
		await desk.change(LABEL, label('One')),
		await desk.change(OTHER, label('Two')),
		await desk.change('README.md', 'A new file'),
		await desk.change('old.md', null),
	];
	const child = spawn(
		process.execPath,
		[program, desk.contentDir, desk.dataDir, point, String(nth), JSON.stringify(changes)],
		{ stdio: ['ignore', 'pipe', 'inherit'] },
	);
	const said = await new Promise<string>((resolve) =>
		child.stdout.once('data', (data) => resolve(String(data))),
	);
	const ended = new Promise((resolve) => child.once('exit', resolve));
	child.kill('SIGKILL');
	await ended;
	expect(said.trim()).toBe('stopped');
}

async function state({ read, contentDir }: Desk): Promise<string> {
	const there = (path: string) => existsSync(join(contentDir, path));
	const label_ = async (path: string, old: string, fresh: string) => {
		const text = await read(path);
		// never anything but the whole old or the whole new text
		expect([label(old), label(fresh)]).toContain(text);
		return text === label(fresh);
	};
	return [
		await label_(LABEL, 'First tooth', 'One'),
		await label_(OTHER, 'Second tooth', 'Two'),
		there('README.md'),
		!there('old.md'),
	]
		.map((isNew) => (isNew ? 'new' : 'old'))
		.join(' ');
}

const ALL_OLD = 'old old old old';
const ALL_NEW = 'new new new new';

describe('a save that is killed', () => {
	it.each([
		['kept', 1, ALL_OLD, ALL_OLD],
		['staged', 1, ALL_OLD, ALL_OLD],
		['journal', 1, ALL_OLD, ALL_NEW],
		['renamed', 1, 'new old old old', ALL_NEW],
		['renamed', 2, 'new new old old', ALL_NEW],
		['renamed', 3, 'new new new old', ALL_NEW],
		['renamed', 4, ALL_NEW, ALL_NEW],
		['listed', 1, ALL_NEW, ALL_NEW],
		['done', 1, ALL_NEW, ALL_NEW],
	])(
		'at %s %i leaves %s, and %s after the next start',
		async (point, nth, found, repaired) => {
			const desk = await deskFolder();
			await desk.write('old.md', 'to be taken away');
			await killedAt(desk, point, nth);
			expect(await state(desk)).toBe(found);
			const again = desk.again();
			await again.ready;
			expect(await state(desk)).toBe(repaired);
			// no temporary file, no journal, and one version where it was written
			expect(await desk.hidden()).toEqual([]);
			expect(await readdir(join(desk.dataDir, 'versions'))).not.toContain('journal.json');
			const versions = await again.versions();
			expect(versions.length).toBe(repaired === ALL_NEW ? 1 : 0);
			if (repaired !== ALL_NEW) return;
			// and it can be undone
			const undone = await again.restore({
				versionId: versions[0].id,
				side: 'before',
				what: { code: 'undone' },
			});
			expect(undone.ok).toBe(true);
			expect(await state(desk)).toBe(ALL_OLD);
		},
		20_000,
	);

	it('leaves alone what somebody has changed before the next start', async () => {
		const desk = await deskFolder();
		await desk.write('old.md', 'to be taken away');
		await killedAt(desk, 'renamed', 1);
		await desk.write(OTHER, label('Mine'));
		const again = desk.again();
		await again.ready;
		expect(await desk.read(OTHER)).toBe(label('Mine'));
		expect(await desk.read('README.md')).toBe('A new file');
		expect(await desk.hidden()).toEqual([]);
		const [version] = await again.versions();
		expect(version.files.map(({ path }) => path).sort()).toEqual(['README.md', 'old.md', LABEL].sort());
	}, 20_000);
});
