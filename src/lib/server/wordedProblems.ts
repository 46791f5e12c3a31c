import type { Problem, WordedProblem } from '../content/problem';
import { WORDED, wordProblem } from '../content/wordProblem';

/** Problems as a page of the desk shows them, in its language where they are worded in it. */
export function wordedProblems(problems: readonly Problem[], lang: string): WordedProblem[] {
	return problems.map((problem) => {
		const { data, ...rest } = problem;
		const worded = data !== undefined && (WORDED as readonly string[]).includes(lang);
		return { ...rest, ...wordProblem(problem, lang), lang: worded ? lang : 'en' };
	});
}
