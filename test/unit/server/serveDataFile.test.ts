import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { serveDataFile } from '../../../src/lib/server/serveDataFile';
import {
	isShapeHash,
	parsePictureName,
	pictureUrl,
	shapeFiles,
	shapeUrl,
} from '../../../src/lib/server/shapeFiles';
import { hashOf, put, scratchFolder } from './samples';

const request = (headers: Record<string, string> = {}): Request => new Request('http://table/x', { headers });
const hash = hashOf('a tooth');

describe('serveDataFile', () => {
	it('answers with the file, its type and length, to be kept for good', async () => {
		const data = await scratchFolder();
		await put(data, `shapes/${hash}/shape.glb`, 'glTF...');
		const answer = await serveDataFile(request(), shapeFiles(data, hash).glb, hash, 'model/gltf-binary');
		expect(answer.status).toBe(200);
		expect(Object.fromEntries(answer.headers)).toEqual({
			'cache-control': 'public, max-age=31536000, immutable',
			'content-length': '7',
			'content-type': 'model/gltf-binary',
			etag: `"${hash}"`,
		});
		expect(await answer.text()).toBe('glTF...');
	});

	it('answers 304 to one who has it already', async () => {
		const data = await scratchFolder();
		await put(data, 'a', 'x');
		for (const tags of [`"${hash}"`, `W/"${hash}"`, `"other", "${hash}"`]) {
			const answer = await serveDataFile(
				request({ 'if-none-match': tags }),
				join(data, 'a'),
				hash,
				'image/webp',
			);
			expect(answer.status).toBe(304);
			expect(await answer.text()).toBe('');
		}
		const other = await serveDataFile(
			request({ 'if-none-match': '"b"' }),
			join(data, 'a'),
			hash,
			'image/webp',
		);
		expect(other.status).toBe(200);
	});

	it('answers 404 in JSON for what is not there', async () => {
		const data = await scratchFolder();
		for (const path of [null, join(data, 'none'), join(data, 'none/deeper')]) {
			const answer = await serveDataFile(request(), path, hash, 'image/webp');
			expect(answer.status).toBe(404);
			expect(answer.headers.get('content-type')).toContain('application/json');
			expect(await answer.json()).toEqual({ error: 'There is nothing at this address.' });
		}
	});
});

describe('shapeFiles', () => {
	const ways = [
		'../../etc/passwd',
		'..%2f..%2fetc%2fpasswd',
		'/etc/passwd',
		'',
		'.',
		`${hash.slice(0, 63)}/`,
		`${hash.slice(0, 61)}/..`,
		`${hash}/../x`,
		hash.toUpperCase(),
		`${hash}\n`,
		`${hash}\0`,
	];

	it('takes nothing but a hash into a path', () => {
		for (const way of ways) {
			expect(isShapeHash(way)).toBe(false);
			expect(() => shapeFiles('/data', way)).toThrow('shapeFiles: not the hash of a shape');
			expect(parsePictureName(`${way}-honey`)).toBeNull();
		}
		expect(isShapeHash(hash)).toBe(true);
	});

	it('takes a picture name apart only where its preservation is known', () => {
		expect(parsePictureName(`${hash}-honey`)).toEqual({ hash, preservation: 'honey' });
		for (const name of [hash, `${hash}-pink`, `${hash}-../../x`, `${hash}honey`, `${hash}-honey/..`]) {
			expect(parsePictureName(name)).toBeNull();
		}
		expect(pictureUrl(hash, 'honey')).toBe(`/pictures/${hash}-honey.webp`);
		expect(shapeUrl(hash)).toBe(`/shapes/${hash}.glb`);
	});
});
