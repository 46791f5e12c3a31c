import type { Exhibit } from '../content/exhibit';
import { isShown } from '../content/shown/isShown';
import { exhibitHash } from './composeExhibit';

/**
 * What visitors see of an exhibit on a day (YYYY-MM-DD): no draft, no specimen or room out of its time, and no question of
 * the quiz that rests on a tooth that is not shown. The same exhibit where all of it is shown.
 */
export function shownExhibit(whole: Exhibit, day: string): Exhibit {
	const specimens = whole.specimens.filter(({ status, show }) => status !== 'draft' && isShown(show, day));
	const rooms = whole.rooms.filter((room) => isShown(whole.roomShows?.[room], day));
	if (specimens.length === whole.specimens.length && rooms.length === whole.rooms.length) return whole;
	const hidden = new Set(whole.specimens.map(({ id }) => id));
	for (const { id } of specimens) hidden.delete(id);
	const { quiz } = whole;
	const shown: Exhibit = {
		...whole,
		specimens,
		rooms,
		...(quiz && {
			quiz: {
				...quiz,
				claims: quiz.claims.filter(({ specimen }) => specimen === undefined || !hidden.has(specimen)),
				questions: quiz.questions.filter((question) => !question.specimens.some((id) => hidden.has(id))),
			},
		}),
	};
	return { ...shown, hash: exhibitHash(shown) };
}
