import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { staffOnly } from '$lib/server/staffOnly';
import type { PageServerLoad } from './$types';

/** Versions on one page. */
const AT_ONCE = 50;

/** Kept versions, newest first; `of` asks for those of one file, or of a folder where it ends in a slash. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const { searchParams } = event.url;
	const of = (searchParams.get('of') ?? '').slice(0, 300);
	const from = Math.max(0, Math.floor(Number(searchParams.get('from')) || 0));
	const desk = getDeskFiles();
	// what a text editor changed meanwhile is a version too
	await desk.notice();
	const all = await desk.versions(of === '' ? undefined : of);
	return {
		of,
		from,
		total: all.length,
		atOnce: AT_ONCE,
		versions: all.slice(from, from + AT_ONCE).map(({ id, time, by, what, files, problems }) => ({
			id,
			time,
			by,
			what,
			errors: problems.errors,
			files: files.slice(0, 4).map(({ path }) => path),
			more: Math.max(0, files.length - 4),
		})),
	};
};
