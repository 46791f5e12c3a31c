import { readdir, readFile, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import * as nodeFs from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { answerUpload } from '../../../../src/lib/server/uploads/answerUpload';
import { lookAtScan } from '../../../../src/lib/server/uploads/lookAtScan';
import { scanUploads, type ScanUploadsOptions } from '../../../../src/lib/server/uploads/scanUploads';
import { fanned, polygonCone, stlBinary, text } from '../../scan/writers';
import { glbOf } from '../../scan/gltfWriters';
import { put, scratchFolder } from '../samples';

const SCAN = stlBinary(fanned(polygonCone(8, 30)));

async function place(options: Partial<ScanUploadsOptions> = {}) {
	const dataDir = await scratchFolder();
	const uploads = scanUploads({
		dataDir,
		now: Date.now,
		look: async (path, name) => lookAtScan(await readFile(path), name),
		mostBytes: 10_000_000,
		...options,
	});
	const left = () => readdir(join(dataDir, 'uploads')).catch((): string[] => []);
	return { dataDir, uploads, left };
}
const bodyOf = (...parts: Uint8Array[]): ReadableStream<Uint8Array> =>
	new ReadableStream({
		start(controller) {
			for (const part of parts) controller.enqueue(part);
			controller.close();
		},
	});
const asked = (bytes: Uint8Array, said: number | null = bytes.length) => ({
	headers: new Headers(said === null ? {} : { 'content-length': String(said) }),
	body: bodyOf(bytes),
});

describe('scanUploads', () => {
	it('takes a scan in piece by piece, under a name of its own, and says what it is', async () => {
		const { uploads, dataDir, left } = await place();
		const half = Math.floor(SCAN.length / 2);
		const got = await uploads.receive(
			bodyOf(SCAN.subarray(0, half), SCAN.subarray(half)),
			SCAN.length,
			'../../content/specimens/x/../../../etc/tooth.stl',
		);
		if (!got.ok) throw new Error(JSON.stringify(got.problem));
		const { upload, look } = got.value;
		expect(upload).toMatch(/^[0-9a-f]{32}$/);
		expect(look.format).toBe('stl');
		expect(look.box[0]).toBeCloseTo(30, 3);
		expect(look.crown?.height).toBeCloseTo(30, 1);
		expect(look.crown?.baseLength).toBeCloseTo(16, 0);
		expect((await left()).sort()).toEqual([`${upload}.json`, `${upload}.scan`]);
		const found = await uploads.find(upload);
		expect(found?.path).toBe(join(dataDir, 'uploads', `${upload}.scan`));
		expect(new Uint8Array(await readFile(found!.path))).toEqual(SCAN);
		await uploads.discard(upload);
		expect(await left()).toEqual([]);
		expect(await uploads.find(upload)).toBeNull();
	});

	it('leaves nothing of a connection that is cut, of too few and of too many bytes', async () => {
		const { uploads, left } = await place();
		const cut = new ReadableStream<Uint8Array>({
			pull(controller) {
				controller.enqueue(SCAN.subarray(0, 500));
				controller.error(new Error('aborted'));
			},
		});
		expect(await uploads.receive(cut, SCAN.length, 'a.stl')).toEqual({
			ok: false,
			problem: { why: 'cut-off' },
		});
		for (const said of [SCAN.length + 1, SCAN.length - 1]) {
			const got = await uploads.receive(bodyOf(SCAN), said, 'a.stl');
			expect(got).toEqual({ ok: false, problem: { why: 'cut-off' } });
		}
		expect(await left()).toEqual([]);
	});

	it('refuses what is larger than may be before a byte is read', async () => {
		const { uploads, left } = await place({ mostBytes: 1000 });
		let read = false;
		const body = new ReadableStream<Uint8Array>(
			{
				pull() {
					read = true;
				},
			},
			{ highWaterMark: 0 },
		);
		expect(await uploads.receive(body, 1001, 'a.stl')).toEqual({ ok: false, problem: { why: 'too-large' } });
		expect(read).toBe(false);
		expect(await left()).toEqual([]);
	});

	it('keeps two at once apart, and makes a third wait', async () => {
		const { uploads } = await place();
		const other = stlBinary(fanned(polygonCone(5, 20)));
		let release = () => {};
		const held = new Promise<void>((resolve) => (release = resolve));
		const slow = (bytes: Uint8Array) =>
			new ReadableStream<Uint8Array>({
				async pull(controller) {
					await held;
					controller.enqueue(bytes);
					controller.close();
				},
			});
		const both = [
			uploads.receive(slow(SCAN), SCAN.length, 'a.stl'),
			uploads.receive(slow(other), other.length, 'a.stl'),
		];
		expect(await uploads.receive(bodyOf(SCAN), SCAN.length, 'a.stl')).toEqual({
			ok: false,
			problem: { why: 'busy' },
		});
		release();
		const [a, b] = await Promise.all(both);
		if (!a.ok || !b.ok) throw new Error('not taken in');
		expect(new Uint8Array(await readFile((await uploads.find(a.value.upload))!.path))).toEqual(SCAN);
		expect(new Uint8Array(await readFile((await uploads.find(b.value.upload))!.path))).toEqual(other);
	});

	it('says that the disk is full, and leaves nothing', async () => {
		const full = Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
		const { uploads, left } = await place({
			fs: {
				...nodeFs,
				open: (async (...args: Parameters<typeof nodeFs.open>) => {
					const file = await nodeFs.open(...args);
					return Object.assign(file, { writeFile: () => Promise.reject(full) });
				}) as typeof nodeFs.open,
			},
		});
		expect(await uploads.receive(bodyOf(SCAN), SCAN.length, 'a.stl')).toEqual({
			ok: false,
			problem: { why: 'not-written', reason: 'ENOSPC' },
		});
		expect(await left()).toEqual([]);
		const tight = await place({ spareBytes: 1e18 });
		expect(await tight.uploads.receive(bodyOf(SCAN), SCAN.length, 'a.stl')).toEqual({
			ok: false,
			problem: { why: 'no-room' },
		});
	});

	it('sweeps what nobody has used and what an earlier process left', async () => {
		const { uploads, dataDir, left } = await place();
		const got = await uploads.receive(bodyOf(SCAN), SCAN.length, 'a.stl');
		if (!got.ok) throw new Error('not taken in');
		const { upload } = got.value;
		await put(dataDir, `uploads/${'0'.repeat(32)}.scan`, 'half');
		await uploads.sweep();
		expect((await left()).sort()).toEqual([`${upload}.json`, `${upload}.scan`]);
		const yesterday = new Date(Date.now() - 86_400_000);
		for (const name of await left()) await utimes(join(dataDir, 'uploads', name), yesterday, yesterday);
		await uploads.sweep();
		expect(await left()).toEqual([]);
	});

	it('finds nothing by a name that is none of its own', async () => {
		const { uploads, dataDir } = await place();
		await put(dataDir, 'staff.json', '{"bytes":2}');
		for (const name of ['../staff', '', '..', 'a'.repeat(32), '../uploads/x'])
			expect(await uploads.find(name), name).toBeNull();
		await uploads.discard('../staff');
		expect(await readFile(join(dataDir, 'staff.json'), 'utf8')).toBe('{"bytes":2}');
	});
});

describe('answerUpload', () => {
	it.each(['en', 'fr', 'es'])('words what cannot be used (%s)', async (lang) => {
		const { uploads, left } = await place();
		const lying = new Uint8Array(glbOf({ asset: { version: '2.0' } }));
		new DataView(lying.buffer).setUint32(8, 0xfffffff0, true);
		for (const [name, bytes] of [
			['tooth.stl', text('\x89PNG\r\n\x1a\n and so on')],
			['tooth.glb', text('<!doctype html><script>alert(1)</script>')],
			['tooth.glb', lying],
			['tooth.gltf', text('{"asset":{"version":"2.0"}}')],
			['tooth.stl', new Uint8Array(0)],
			['../../up.stl', SCAN.subarray(0, 200)],
			['tooth', text('nothing of the kind')],
		] as const) {
			const answer = await answerUpload(uploads, asked(bytes), name, lang);
			if (answer.ok) throw new Error(`${name} was taken`);
			expect(answer.why, name).toBe('unreadable');
			expect(answer.words?.lang).toBe(lang);
			expect(answer.words?.message.length, name).toBeGreaterThan(10);
			expect(answer.words?.remedy.length, name).toBeGreaterThan(10);
			expect(answer.words?.message).not.toContain('..');
		}
		expect(await left()).toEqual([]);
	});

	it('goes by the bytes, not by the name', async () => {
		const { uploads } = await place();
		const answer = await answerUpload(uploads, asked(SCAN), 'tooth.glb', 'en');
		expect(answer.ok && answer.look.format).toBe('stl');
	});

	it('wants to know the size beforehand', async () => {
		const { uploads, left } = await place();
		expect(await answerUpload(uploads, asked(SCAN, null), 'a.stl', 'en')).toEqual({
			ok: false,
			why: 'cut-off',
		});
		expect(await left()).toEqual([]);
	});
});
