import { getDeskFiles } from '$lib/server/desk/getDeskFiles';
import { getStore } from '$lib/server/getStore';
import { staffOnly } from '$lib/server/staffOnly';
import { wordedProblems } from '$lib/server/wordedProblems';
import type { PageServerLoad } from './$types';

/** One text file as it is now (`file`, at `line`), or all that may be opened; for staff only. */
export const load: PageServerLoad = async (event) => {
	staffOnly(event);
	event.depends('exhibit:now');
	const { searchParams } = event.url;
	const path = searchParams.get('file');
	const problems = getStore().problems();
	if (path === null) {
		const counts = new Map<string, number>();
		for (const { file } of problems) counts.set(file, (counts.get(file) ?? 0) + 1);
		const files = (await getDeskFiles().list()).map(({ path: one }) => ({
			path: one,
			problems: counts.get(one) ?? 0,
		}));
		return { file: null, refused: null, files, line: 1, problems: [] };
	}
	const opened = await getDeskFiles().open(path);
	const lang = searchParams.get('lang') ?? '';
	return {
		file: opened.ok ? { path, text: opened.value.text, base: opened.value.base } : null,
		refused: opened.ok ? null : { path: path.slice(0, 200), why: opened.problem.code },
		files: [],
		line: Math.max(1, Math.floor(Number(searchParams.get('line')) || 1)),
		problems: wordedProblems(
			problems.filter(({ file }) => file === path),
			lang,
		),
	};
};
