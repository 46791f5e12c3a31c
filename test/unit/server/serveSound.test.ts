import { symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { serveSound } from '../../../src/lib/server/serveSound';
import { soundFile, soundUrl } from '../../../src/lib/server/sounds';
import { put, scratchFolder } from './samples';

const request = (headers: Record<string, string> = {}): Request => new Request('http://table/x', { headers });

async function served() {
	const folder = await scratchFolder();
	const path = soundFile('skm-0104', 'en')!;
	await put(folder, path, '0123456789');
	return { folder, path };
}

describe('serveSound', () => {
	it('answers with the whole recording, and says that parts may be asked for', async () => {
		const { folder, path } = await served();
		const answer = await serveSound(request(), folder, path);
		expect(answer.status).toBe(200);
		expect(answer.headers.get('content-type')).toBe('audio/mpeg');
		expect(answer.headers.get('accept-ranges')).toBe('bytes');
		expect(answer.headers.get('content-length')).toBe('10');
		expect(await answer.text()).toBe('0123456789');
		const etag = answer.headers.get('etag')!;
		expect((await serveSound(request({ 'if-none-match': etag }), folder, path)).status).toBe(304);
	});

	// forms of a range: RFC 9110, 14.1.2
	it.each([
		['bytes=0-3', '0123', 'bytes 0-3/10'],
		['bytes=7-', '789', 'bytes 7-9/10'],
		['bytes=-2', '89', 'bytes 8-9/10'],
		['bytes=8-99', '89', 'bytes 8-9/10'],
		['bytes=-99', '0123456789', 'bytes 0-9/10'],
	])('answers %s with a part', async (range, text, told) => {
		const { folder, path } = await served();
		const answer = await serveSound(request({ range }), folder, path);
		expect(answer.status).toBe(206);
		expect(answer.headers.get('content-range')).toBe(told);
		expect(answer.headers.get('content-length')).toBe(String(text.length));
		expect(await answer.text()).toBe(text);
	});

	it.each(['bytes=10-', 'bytes=12-20', 'bytes=-0'])('refuses %s with 416', async (range) => {
		const { folder, path } = await served();
		const answer = await serveSound(request({ range }), folder, path);
		expect(answer.status).toBe(416);
		expect(answer.headers.get('content-range')).toBe('bytes */10');
	});

	it.each(['bytes=5-2', 'bytes=0-1,4-5', 'lines=0-3', 'bytes=-', 'bytes=a-b'])(
		'takes %s for the whole',
		async (range) => {
			const { folder, path } = await served();
			const answer = await serveSound(request({ range }), folder, path);
			expect(answer.status).toBe(200);
			expect(await answer.text()).toBe('0123456789');
		},
	);

	it('takes a range that another version of the file was meant by for the whole', async () => {
		const { folder, path } = await served();
		const answer = await serveSound(request({ range: 'bytes=0-3', 'if-range': '"other"' }), folder, path);
		expect(answer.status).toBe(200);
	});

	it('answers 404 for what is not there, empty, or outside of the folder', async () => {
		const { folder } = await served();
		await put(folder, 'specimens/skm-0107/label.en.mp3', '');
		const outside = await scratchFolder();
		await put(outside, 'secret.mp3', 'x');
		await symlink(join(outside, 'secret.mp3'), join(folder, 'specimens/skm-0104/label.fr.mp3'));
		for (const path of [
			null,
			'specimens/skm-0104/label.es.mp3',
			'specimens/skm-0107/label.en.mp3',
			'specimens/skm-0104/label.fr.mp3',
			'../secret.mp3',
		]) {
			const answer = await serveSound(request(), folder, path);
			expect(answer.status, String(path)).toBe(404);
		}
	});

	it('has no file for names that can be none', () => {
		expect(soundFile('skm-0104', 'en')).toBe('specimens/skm-0104/label.en.mp3');
		for (const [id, language] of [
			['..', 'en'],
			['a/b', 'en'],
			['a', '../x'],
			['a', 'EN'],
			['', 'en'],
		])
			expect(soundFile(id, language)).toBe(null);
	});

	it('has another address for another recording', () => {
		expect(soundUrl('skm-0104', 'en', 'a')).toMatch(/^\/sounds\/skm-0104\/en\.mp3\?v=[0-9a-f]{12}$/);
		expect(soundUrl('skm-0104', 'en', 'a')).not.toBe(soundUrl('skm-0104', 'en', 'b'));
	});
});
