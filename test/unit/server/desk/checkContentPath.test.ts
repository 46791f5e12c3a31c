import { mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkContentPath } from '../../../../src/lib/server/desk/checkContentPath';
import { scratchFolder } from '../samples';
import { deskFolder, LABEL } from './deskFolder';

const what = { code: 'edited' };
const by = 'desk' as const;

/** Names that must never be opened or written. */
const ATTACKS: readonly string[] = [
	'',
	'.',
	'..',
	'/',
	'../outside.md',
	'../../etc/passwd',
	'specimens/../../outside.md',
	'specimens/a/../../../outside.md',
	'specimens/./a/label.en.md',
	'specimens//a/label.en.md',
	'/etc/passwd',
	'/tmp/x.md',
	'./exhibit.yaml',
	'exhibit.yaml/',
	'..\\outside.md',
	'specimens\\a\\label.en.md',
	'C:\\outside.md',
	'C:/outside.md',
	'c:outside.md',
	'\\\\server\\share\\x.md',
	'//server/share/x.md',
	'file:///etc/passwd',
	'exhibit.yaml:stream.md',
	'exhibit.yaml::$DATA',
	'%2e%2e/outside.md',
	'%2e%2e%2foutside.md',
	'..%2foutside.md',
	'..%5coutside.md',
	'..%c0%afoutside.md',
	'%252e%252e/outside.md',
	'\uFF0E\uFF0E/\uFF0E\uFF0E/etc/passwd',
	'exhibit.yaml\0.md',
	'exhibit\0.yaml',
	'a\nb.md',
	'a\rb.md',
	'a\tb.md',
	'\u202Egnp.md',
	'a\u200Bb.md',
	'\uFEFFexhibit.yaml',
	'cafe\u0301.md',
	'.git/config.yaml',
	'.schemas/x.yaml',
	'specimens/.hidden/specimen.yaml',
	'specimens/a/.label.en.md',
	'.env.md',
	'exhibit.yaml.',
	'exhibit.yaml ',
	' exhibit.yaml',
	'specimens /a/label.en.md',
	'specimens./a/label.en.md',
	'CON.md',
	'con.yaml',
	'nul.md',
	'specimens/aux/label.en.md',
	'specimens/COM1/label.en.md',
	'lpt9.en.md',
	'com\u00B9.md',
	'a<b.md',
	'a>b.md',
	'a"b.md',
	'a|b.md',
	'a?b.md',
	'a*b.md',
	'exhibit.YAML',
	'exhibit.yml',
	'x.html',
	'x.js',
	'x.svg',
	'specimens/a/x.exe',
	'specimens/a/scan.stl.exe',
	'specimens/a/b/scan.stl',
	'groups/../x.svg',
	'specimens/a/label.en.md~',
	'specimens/a/~$label.en.md',
	'#label.en.md#',
	'a.md.tmp',
	'package.json',
	`${'a'.repeat(81)}.md`,
	'a/a/a/a/a/a/a.md',
	`${'a/'.repeat(4000)}a.md`,
];

describe('checkContentPath', () => {
	it.each(ATTACKS.map((path) => [JSON.stringify(path).slice(0, 60), path]))('refuses %s', (_, path) => {
		expect(checkContentPath(path)).toBeNull();
	});

	it('refuses what is no text at all', () => {
		for (const path of [null, undefined, 1, {}, [], ['exhibit.yaml'], true])
			expect(checkContentPath(path)).toBeNull();
	});

	it.each([
		['exhibit.yaml', 'text'],
		['README.md', 'text'],
		['specimens/skm-0104/label.fr.md', 'text'],
		['feeding/words/en.yaml', 'text'],
		['specimens/skm-0104/scan.stl', 'data'],
		['specimens/skm-0104/label.en.mp3', 'data'],
		['groups/mosasaurus.svg', 'data'],
	])('takes %s', (path, kind) => {
		expect(checkContentPath(path)).toBe(kind);
	});

	it('takes no path that leads out of a folder, whatever it is made of', () => {
		const step = fc.oneof(
			fc.constantFrom('..', '.', '', 'specimens', 'a', 'x.md', '%2e%2e', '..\\..', 'C:', '\0', '. .', '...'),
			fc.string({ maxLength: 6 }),
		);
		fc.assert(
			fc.property(fc.array(step, { maxLength: 6 }), (steps) => {
				const path = steps.join('/');
				if (checkContentPath(path) === null) return;
				expect(join('/root', path).startsWith('/root/')).toBe(true);
				expect(path.split('/').some((one) => one.startsWith('.'))).toBe(false);
			}),
			{ numRuns: 2000, seed: 5 },
		);
	});
});

describe('deskFiles under attack', () => {
	it('opens, makes and takes away nothing by such names', async () => {
		const { desk, contentDir } = await deskFolder();
		const before = (await readdir(join(contentDir, '..'))).sort();
		for (const path of ATTACKS) {
			expect((await desk.open(path)).ok).toBe(false);
			for (const text of ['x', null]) {
				const saved = await desk.save({
					changes: [{ path, text, base: null }],
					by,
					what,
					evenIfBroken: true,
				});
				expect(saved).toMatchObject({ ok: false, problem: { code: 'refused' } });
			}
		}
		expect((await readdir(join(contentDir, '..'))).sort()).toEqual(before);
		expect(await desk.versions()).toEqual([]);
	}, 20_000);

	it('follows no link out of the folder, into its hidden parts, to nothing or in a circle', async () => {
		const { desk, contentDir } = await deskFolder();
		const outside = await scratchFolder();
		await writeFile(join(outside, 'x.md'), 'secret');
		await mkdir(join(contentDir, '.schemas'));
		await writeFile(join(contentDir, '.schemas/x.md'), 'hidden');
		await symlink(join(outside, 'x.md'), join(contentDir, 'file.md'));
		await symlink(outside, join(contentDir, 'folder'));
		await symlink(join(contentDir, '.schemas'), join(contentDir, 'schemas'));
		await symlink(join(contentDir, 'nothing'), join(contentDir, 'none.md'));
		await symlink(join(contentDir, 'round.md'), join(contentDir, 'round.md'));
		await symlink('..', join(contentDir, 'up'));
		await symlink('.', join(contentDir, 'here'));
		const links = [
			'file.md',
			'folder/x.md',
			'folder/new.md',
			'schemas/x.md',
			'none.md',
			'round.md',
			'up/x.md',
		];
		for (const path of [...links, 'here/exhibit.yaml']) {
			expect(await desk.open(path)).toEqual({ ok: false, problem: { code: 'not-allowed', path } });
			const saved = await desk.save({
				changes: [{ path, text: 'x', base: null }],
				by,
				what,
				evenIfBroken: true,
			});
			expect(saved).toEqual({ ok: false, problem: { code: 'refused', path, why: 'not-allowed' } });
		}
		expect(await readdir(outside)).toEqual(['x.md']);
		expect(await readFile(join(outside, 'x.md'), 'utf8')).toBe('secret');
		expect((await desk.list()).some(({ path }) => links.includes(path))).toBe(false);
	});

	it('writes through a link that stays inside, and leaves it a link', async () => {
		const { desk, contentDir, change, read } = await deskFolder();
		await mkdir(join(contentDir, 'shared'));
		await writeFile(join(contentDir, 'shared/real.md'), 'old');
		await symlink('shared/real.md', join(contentDir, 'link.md'));
		const changes = [await change('link.md', 'new')];
		expect((await desk.save({ changes, by, what, evenIfBroken: true })).ok).toBe(true);
		expect(await read('shared/real.md')).toBe('new');
		const both = [await change('link.md', '1'), await change('shared/real.md', '2')];
		expect(await desk.save({ changes: both, by, what, evenIfBroken: true })).toMatchObject({
			problem: { code: 'refused', why: 'twice' },
		});
	});

	it('refuses a name that differs from one that is there in capitals only', async () => {
		const { desk } = await deskFolder();
		for (const path of ['Exhibit.yaml', 'specimens/A/specimen.yaml', 'Specimens/c/specimen.yaml']) {
			const saved = await desk.save({
				changes: [{ path, text: 'x', base: null }],
				by,
				what,
				evenIfBroken: true,
			});
			expect(saved).toEqual({ ok: false, problem: { code: 'refused', path, why: 'case-differs' } });
		}
	});

	it('writes nothing where a folder becomes a link out between the first look and the last', async () => {
		const outside = await scratchFolder();
		const { desk, contentDir, change } = await deskFolder({
			at: async (point) => {
				if (point !== 'kept') return;
				const { rename } = await import('node:fs/promises');
				await rename(join(contentDir, 'specimens/a'), join(contentDir, 'specimens/moved'));
				await symlink(outside, join(contentDir, 'specimens/a'));
			},
		});
		const saved = await desk.save({
			changes: [await change(LABEL, '---\ntitle: X\nshort: Y\n---\n')],
			by,
			what,
		});
		expect(saved.ok).toBe(false);
		expect(await readdir(outside)).toEqual([]);
	});
});
