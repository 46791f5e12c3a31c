import { readFile } from 'node:fs/promises';
import type { ContentReader } from '../../content/draft';
import { fileKind } from '../../content/fileKind';
import { pathInside } from '../fsReader';
import type { SpecimenFiles } from './specimenCells';

/** Text of a file with its mark, exactly; null where it is not there, not UTF-8 or outside the folder. */
export async function readExactly(contentDir: string, path: string): Promise<string | null> {
	try {
		const bytes = await readFile(await pathInside(contentDir, path));
		return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
	} catch {
		return null;
	}
}

/**
 * The files of every specimen of a content folder, by folder name. `unreadable` are those of which a file is there but
 * cannot be read as it is: they are best left alone.
 */
export async function specimenFiles(
	reader: ContentReader,
	read: (path: string) => Promise<string | null>,
): Promise<{ specimens: SpecimenFiles[]; unreadable: Set<string> }> {
	const byId = new Map<string, { facts: string | null; labels: Map<string, string> }>();
	const unreadable = new Set<string>();
	for (const { path } of await reader.list()) {
		const kind = fileKind(path);
		const isLabel = kind.kind === 'text' && kind.of === 'specimen';
		if (kind.kind !== 'specimen' && !isLabel) continue;
		const known = byId.get(kind.id) ?? { facts: null, labels: new Map<string, string>() };
		byId.set(kind.id, known);
		const text = await read(path);
		if (text === null) unreadable.add(kind.id);
		else if (isLabel) known.labels.set(kind.language, text);
		else known.facts = text;
	}
	const specimens = [...byId]
		.sort(([a], [b]) => (a < b ? -1 : 1))
		.flatMap(([id, { facts, labels }]) =>
			facts === null || unreadable.has(id) ? [] : [{ id, facts, labels }],
		);
	return { specimens, unreadable };
}
