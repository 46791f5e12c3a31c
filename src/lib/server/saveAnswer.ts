import type { SaveAnswer } from '../content/deskAnswers';
import type { Saved, SaveFailure } from '../content/deskFiles';
import type { Result } from '../domain/result';
import { wordedProblems } from './wordedProblems';

/** How a save went, for a page in this language. */
export function saveAnswer(saved: Result<Saved, SaveFailure>, lang: string): SaveAnswer {
	if (saved.ok) {
		const { version, files, problems } = saved.value;
		return { ok: true, saved: { version, files, problems: wordedProblems(problems, lang) } };
	}
	const failure = saved.problem;
	if (failure.code !== 'has-errors') return { ok: false, failure };
	return {
		ok: false,
		failure: {
			code: 'has-errors',
			problems: wordedProblems(failure.problems, lang),
			fresh: wordedProblems(failure.fresh, lang),
		},
	};
}
