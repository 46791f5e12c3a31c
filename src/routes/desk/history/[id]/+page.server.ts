import type { Difference } from '$lib/content/deskFiles';
import { differenceInWords } from '$lib/server/desk/differenceInWords';
import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { staffOnly } from '$lib/server/staffOnly';
import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

/** Files whose differences are shown at once. */
const MOST_FILES = 20;

/** One kept version: what it changed, file by file. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	const desk = getDeskFiles();
	const all = await desk.versions();
	const version = all.find(({ id }) => id === event.params.id);
	if (!version) error(404, 'Not found');
	const files = await Promise.all(
		version.files.slice(0, MOST_FILES).map(async ({ path, before, after, kept }) => {
			const [older, newer] = await Promise.all(
				(['before', 'after'] as const).map((side) => desk.readVersion(version.id, path, side)),
			);
			const difference: Difference | null =
				older.ok && newer.ok ? shortened(differenceInWords(path, older.value, newer.value)) : null;
			return { path, kept, is: before === null ? 'new' : after === null ? 'gone' : 'changed', difference };
		}),
	);
	return {
		version: { id: version.id, time: version.time, by: version.by, what: version.what },
		newest: all[0]?.id === version.id,
		files,
		more: Math.max(0, version.files.length - MOST_FILES),
		canRestore: version.files.every(({ kept }) => kept),
	};
};

/** Lines round each change; the rest is left out. */
const AROUND = 2;

function shortened(difference: Difference): Difference {
	const { lines } = difference;
	const near = lines.map((_, i) =>
		lines.slice(Math.max(0, i - AROUND), i + AROUND + 1).some(({ kind }) => kind !== 'same'),
	);
	return { ...difference, lines: lines.filter((_, i) => near[i]).slice(0, 400) };
}
