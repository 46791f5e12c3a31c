import type { ContentReader } from '../../../src/lib/content/draft';

/** Files in memory as a content folder; `reads` lists what was read. */
export function memoryReader(files: Record<string, string>): ContentReader & { reads: string[] } {
	const reads: string[] = [];
	return {
		reads,
		list: async () =>
			Object.entries(files).map(([path, text]) => ({ path, size: Buffer.byteLength(text), stamp: text })),
		read: async (path) => {
			reads.push(path);
			return files[path];
		},
	};
}
