import { join } from 'node:path';
import type { ContentReader } from '../../content/draft';
import type { KeptFile } from '../../content/deskFiles';
import type { Problem } from '../../content/problem';
import { MOST_BYTES } from '../../content/loadContent';
import { writeAtomically } from '../writeAtomically';
import { checkContentPath } from './checkContentPath';
import type { DeskFs } from './deskFs';
import { OLDEST, type KeptVersions } from './keptVersions';
import { placeInside } from './placeInside';
import { versionId } from './versionId';
import { hashOfFile } from './writeFiles';

interface Noticing {
	fs: DeskFs;
	contentDir: string;
	/** where versions are kept */
	folder: string;
	reader: ContentReader;
	kept: KeptVersions;
	now: () => number;
	/** of the folder as it is */
	problems: () => Promise<readonly Problem[]>;
}

/**
 * Keeps a version of what a text editor, or anything else but the desk, has changed since the last one. The first time it
 * keeps the folder as it is. Files whose time and size are as when they were last looked at are not read.
 */
export async function noticeChanges(noticing: Noticing): Promise<void> {
	const { fs, contentDir, folder, reader, kept, now } = noticing;
	if (
		!(await fs.stat(contentDir).then(
			(facts) => facts.isDirectory(),
			() => false,
		))
	)
		return;
	const seenPath = join(folder, 'seen.json');
	const seen = await fs
		.readFile(seenPath, 'utf8')
		.then(
			(text) => JSON.parse(text) as Record<string, [stamp: string, hash: string]>,
			() => ({}) as Record<string, [string, string]>,
		)
		.catch(() => ({}) as Record<string, [string, string]>);
	const known = await kept.known();
	const first = (await kept.all()).length === 0;
	const listed = (await reader.list()).filter(({ path }) => checkContentPath(path) !== null);
	const files: KeptFile[] = [];
	const nowSeen: Record<string, [string, string]> = {};
	let looked = false;
	for (const { path, size, stamp } of listed) {
		const before = known.get(path) ?? null;
		const last = Object.hasOwn(seen, path) ? seen[path] : undefined;
		if (last?.[0] === stamp && last[1] === before) {
			nowSeen[path] = last;
			continue;
		}
		looked = true;
		const place = await placeInside(fs, contentDir, path);
		if (!place.ok || !place.value.isThere) continue;
		const isText = place.value.kind === 'text' && size <= MOST_BYTES;
		let hash = await hashOfFile(fs, place.value.real);
		// scans are the curator's to keep: a copy of each would fill the disk
		if (isText && hash !== null && hash !== before) {
			hash = await kept.keep(await fs.readFile(place.value.real), first);
		}
		if (hash === null) continue;
		nowSeen[path] = [stamp, hash];
		if (hash !== before) files.push({ path, before: first ? hash : before, after: hash, kept: isText });
	}
	const there = new Set(listed.map(({ path }) => path));
	for (const [path, before] of known) {
		if (!there.has(path)) files.push({ path, before, after: null, kept: (await kept.read(before)) !== null });
	}
	// with all files gone it is rather a disk that was taken away
	if (there.size === 0) return;
	if (files.length > 0) {
		const all = await noticing.problems();
		const mine = all.filter(({ file }) => first || files.some(({ path }) => path === file));
		await kept.add({
			...versionId(now()),
			by: 'outside',
			what: { code: first ? OLDEST : 'outside', ...(first ? {} : { data: { files: files.length } }) },
			files,
			problems: {
				errors: mine.filter(({ severity }) => severity === 'error').length,
				warnings: mine.filter(({ severity }) => severity === 'warning').length,
			},
		});
	}
	if (looked || files.length > 0) await writeAtomically(seenPath, JSON.stringify(nowSeen), fs);
}
