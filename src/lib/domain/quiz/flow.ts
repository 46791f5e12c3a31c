import { judge, type Judgement } from './judge';
import type { Question, QuizTooth, Response } from './question';

export const MOST_TEAMS = 6;
/**
 * Answers stay closed this long after a question appears. Waiting three seconds or more gives better answers: Rowe 1972,
 * "Wait-time and rewards as instructional variables".
 */
export const THINK_MS = 3000;
/** A breath between locking in and being told; ours. */
export const PAUSE_MS = 1000;

/** One team's answer to one question, judged. */
export interface TeamResult {
	response: Response | null;
	judgement: Judgement | null;
}

export interface QuestionResult {
	question: string;
	topic: string;
	/** by team; null response = the team was not asked or did not answer */
	teams: TeamResult[];
	hints: number;
	skipped: boolean;
}

/**
 * think = answers closed; answer = teams answer in turn and may change their minds; hush = locked in, not yet told;
 * reveal = told and shown; done = the summary
 */
export type Phase = 'think' | 'answer' | 'hush' | 'reveal' | 'done';

/** Where a round stands. Plain data, so that a page that was reloaded can go on. Nothing in it is about a person. */
export interface RoundState {
	code: string;
	/** hash of what the questions were made from: another ground gives other questions */
	ground: string;
	teams: number;
	questions: number;
	/** index of the question on the screen */
	at: number;
	phase: Phase;
	/** when the phase began, ms on the caller's clock */
	since_ms: number;
	/** whose turn it is, 0 .. teams - 1 */
	turn: number;
	/** answers to the question on the screen, by team */
	answers: (Response | null)[];
	hints: number;
	results: QuestionResult[];
}

export type RoundEvent =
	| { kind: 'tick' }
	/** `team` may be another than the one whose turn it is: a change of mind */
	| { kind: 'answer'; team: number; response: Response }
	| { kind: 'turn'; team: number }
	| { kind: 'hint' }
	| { kind: 'lock' }
	| { kind: 'next' }
	/** by staff: the question counts for nobody */
	| { kind: 'skip' }
	| { kind: 'end' };

export function startRound(
	code: string,
	ground: string,
	teams: number,
	questions: number,
	now_ms: number,
): RoundState {
	if (!Number.isInteger(teams) || teams < 1 || teams > MOST_TEAMS)
		throw new Error(`startRound: teams are 1 to ${MOST_TEAMS}`);
	const fresh = { code, ground, teams, questions, at: 0, phase: 'think' as const, since_ms: now_ms };
	const state = {
		...fresh,
		turn: 0,
		answers: Array<Response | null>(teams).fill(null),
		hints: 0,
		results: [],
	};
	return questions > 0 ? state : { ...state, phase: 'done' };
}

/** Teams that answer a question: all of them, or one in turn where something has to be done by hand. */
export function askedTeams(state: RoundState, question: Question): number[] {
	if (!isByHand(question)) return Array.from({ length: state.teams }, (_, team) => team);
	return [handsFor(state)];
}

/** What has to be done on the tooth itself by one pair of hands. */
export const isByHand = ({ task }: Question): boolean =>
	task.kind === 'touch' || task.kind === 'caliper' || task.kind === 'order';

/** Hands come round by turns: the first team for the first question, and so on. */
const handsFor = ({ at, teams }: RoundState): number => at % teams;

/**
 * The state after an event. What does not fit the phase changes nothing, so that a late or doubled touch does no harm.
 * `tooth` is the one on the table, for what is touched.
 */
export function afterEvent(
	state: RoundState,
	event: RoundEvent,
	question: Question,
	now_ms: number,
	tooth?: QuizTooth,
): RoundState {
	switch (event.kind) {
		case 'tick':
			return afterTime(state, question, now_ms);
		case 'answer': {
			if (state.phase !== 'answer' || !askedTeams(state, question).includes(event.team)) return state;
			const answers = state.answers.map((old, team) => (team === event.team ? event.response : old));
			return { ...state, answers, turn: nextTurn(state, question, answers, event.team) };
		}
		case 'turn':
			if (state.phase !== 'answer' || !askedTeams(state, question).includes(event.team)) return state;
			return { ...state, turn: event.team };
		case 'hint':
			return state.phase === 'think' || state.phase === 'answer'
				? { ...state, hints: state.hints + 1 }
				: state;
		case 'lock':
			if (state.phase !== 'answer' || !everyoneAnswered(state, question)) return state;
			return {
				...state,
				phase: 'hush',
				since_ms: now_ms,
				results: [...state.results, result(state, question, tooth)],
			};
		case 'next':
			return state.phase === 'reveal' ? nextQuestion(state, now_ms) : state;
		case 'skip': {
			if (state.phase === 'done') return state;
			if (state.phase === 'hush' || state.phase === 'reveal') return nextQuestion(state, now_ms);
			const teams = state.answers.map((): TeamResult => ({ response: null, judgement: null }));
			const skipped = {
				question: question.id,
				topic: question.topic,
				teams,
				hints: state.hints,
				skipped: true,
			};
			return nextQuestion({ ...state, results: [...state.results, skipped] }, now_ms);
		}
		case 'end':
			return state.phase === 'done' ? state : { ...state, phase: 'done', since_ms: now_ms };
	}
}

export function everyoneAnswered(state: RoundState, question: Question): boolean {
	return askedTeams(state, question).every((team) => state.answers[team] !== null);
}

/** Time only opens the answers and ends the breath before the telling. A clock that jumps back waits anew. */
function afterTime(state: RoundState, question: Question, now_ms: number): RoundState {
	if (now_ms < state.since_ms) return { ...state, since_ms: now_ms };
	const passed = now_ms - state.since_ms;
	if (state.phase === 'think' && passed >= THINK_MS)
		return { ...state, phase: 'answer', since_ms: now_ms, turn: askedTeams(state, question)[0] };
	if (state.phase === 'hush' && passed >= PAUSE_MS) return { ...state, phase: 'reveal', since_ms: now_ms };
	return state;
}

/** The next team without an answer, after the one that has just answered; it keeps the turn when all have. */
function nextTurn(
	state: RoundState,
	question: Question,
	answers: readonly (Response | null)[],
	team: number,
): number {
	const asked = askedTeams(state, question);
	const at = asked.indexOf(team);
	const order = [...asked.slice(at + 1), ...asked.slice(0, at)];
	return order.find((one) => answers[one] === null) ?? team;
}

function result(state: RoundState, question: Question, tooth: QuizTooth | undefined): QuestionResult {
	return {
		question: question.id,
		topic: question.topic,
		teams: state.answers.map((response) => ({
			response,
			judgement: response ? judge(question, response, tooth) : null,
		})),
		hints: state.hints,
		skipped: false,
	};
}

function nextQuestion(state: RoundState, now_ms: number): RoundState {
	const at = state.at + 1;
	if (at >= state.questions) return { ...state, phase: 'done', since_ms: now_ms };
	const answers = state.answers.map(() => null);
	return { ...state, at, phase: 'think', since_ms: now_ms, turn: at % state.teams, answers, hints: 0 };
}
