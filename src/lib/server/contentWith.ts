import type { ContentReader } from '../content/draft';
import { sha256 } from './shapeHash';

/** What a file is to hold: a text, so many bytes that nobody reads, or nothing at all. */
export type PlannedFile = string | { bytes: number } | null;

/** The folder as it would be with these files, by path. */
export function contentWith(reader: ContentReader, planned: ReadonlyMap<string, PlannedFile>): ContentReader {
	return {
		async list() {
			const listed = (await reader.list()).filter(({ path }) => !planned.has(path));
			return [...listed, ...[...planned].flatMap(([path, file]) => (file === null ? [] : entry(path, file)))];
		},
		async read(path) {
			const file = planned.get(path);
			if (file === undefined) return reader.read(path);
			// as the reader of the folder does: without the mark
			if (typeof file === 'string') return file.replace(/^\uFEFF/, '');
			throw new Error(`contentWith: ${path} is not a text`);
		},
	};
}

const entry = (path: string, file: Exclude<PlannedFile, null>) =>
	typeof file === 'string'
		? { path, size: Buffer.byteLength(file), stamp: `planned ${sha256(file)}` }
		: { path, size: file.bytes, stamp: `planned ${file.bytes}` };
