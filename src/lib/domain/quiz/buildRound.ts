import { caliperQuestions, orderQuestions } from './numberQuestions';
import type {
	AgeBand,
	Claim,
	OwnQuestion,
	Question,
	QuestionKind,
	QuizPrey,
	QuizTooth,
	RoundLength,
} from './question';
import { seeded, shuffled, type Random } from './seeded';
import {
	claimQuestions,
	matchQuestions,
	ownQuestions,
	placeQuestions,
	positionQuestions,
	shedQuestions,
	touchQuestions,
} from './thingQuestions';
import { traitQuestions } from './traitQuestions';

/** All that a round is made from. */
export interface QuizGround {
	teeth: readonly QuizTooth[];
	preys: readonly QuizPrey[];
	claims: readonly Claim[];
	own: readonly OwnQuestion[];
	/** kinds that the curator has switched off */
	off: readonly QuestionKind[];
}

/** share of a round that one kind may fill; ours */
const MOST_OF_ONE = 0.4;
/** how hard the first and the last question should be, by band; ours */
const CLIMB: Readonly<Record<AgeBand, readonly [number, number]>> = {
	'5-7': [0, 0.3],
	'7-11': [0.1, 0.5],
	'11-14': [0.2, 0.8],
};
/** a kind comes as often as its weight says, beside the others; looking comes first; ours */
const WEIGHT: Readonly<Record<QuestionKind, number>> = {
	choose: 3,
	touch: 1.5,
	place: 1,
	order: 1,
	match: 1.5,
	caliper: 1,
	shed: 1,
	position: 0.7,
	claim: 1,
};
/** kinds whose options stand in no order of their own */
const FREE: readonly QuestionKind[] = ['choose', 'touch', 'match', 'caliper'];
/** the same kinds suit no band alike; a kind that is not here is for all */
const FROM_AGE: Readonly<Partial<Record<QuestionKind, readonly AgeBand[]>>> = {
	caliper: ['7-11', '11-14'],
	position: ['7-11', '11-14'],
};

/** Every question that the ground allows for a band; each has exactly one right answer by its margin. */
export function allQuestions(ground: QuizGround, band: AgeBand, seed: string): Question[] {
	const { teeth } = ground;
	const source = (name: string): Random => seeded(`${seed}/${name}`);
	const made: Question[] = [
		...traitQuestions(teeth, band, source('choose')),
		...touchQuestions(teeth, band, source('touch')),
		...placeQuestions(teeth),
		...orderQuestions(teeth, band, source('order')),
		...matchQuestions(teeth, ground.preys, source('match')),
		...caliperQuestions(teeth, band, source('caliper')),
		...shedQuestions(teeth),
		...positionQuestions(teeth),
	].filter(({ kind }) => !ground.off.includes(kind) && (FROM_AGE[kind]?.includes(band) ?? true));
	// what a curator has written is never switched off with the built ones
	return [
		...made,
		...claimQuestions(ground.claims, band),
		...ownQuestions(ground.own, teeth, band, source('own')),
	];
}

/**
 * A round of questions, the same for the same ground, band, length and seed. No question and no right tooth twice, no
 * topic twice in a row, no kind twice in a row while another is left, no kind more than two in five, easy first. Where
 * the ground does not give enough, the rules on teeth and kinds are relaxed in that order, and if it still does not, the
 * round is shorter than asked for.
 */
export function buildRound(ground: QuizGround, band: AgeBand, length: RoundLength, seed: number): Question[] {
	const name = `${band}/${length}/${seed}`;
	const random = seeded(name);
	const pool = shuffled(allQuestions(ground, band, name), random);
	const round: Question[] = [];
	while (round.length < length) {
		const next = pick(pool, round, band, length, random);
		if (!next) break;
		round.push(next);
	}
	return balanced(round, random);
}

function pick(
	pool: readonly Question[],
	round: readonly Question[],
	band: AgeBand,
	length: number,
	random: Random,
): Question | null {
	const last = round[round.length - 1];
	const ids = new Set(round.map(({ id }) => id));
	const heroes = new Set(round.map(hero));
	const count = (kind: QuestionKind) => round.filter((one) => one.kind === kind).length;
	const most = Math.max(1, Math.ceil(MOST_OF_ONE * length));
	const open = pool.filter(({ id, topic }) => !ids.has(id) && topic !== last?.topic);
	const rules: ((question: Question) => boolean)[] = [
		(question) => !heroes.has(hero(question)),
		({ kind }) => kind !== last?.kind,
		({ kind }) => count(kind) < most,
	];
	const [low, high] = CLIMB[band];
	const wanted = low + ((high - low) * round.length) / Math.max(1, length - 1);
	for (let strict = 0; strict <= rules.length; strict += 1) {
		const left = open.filter((question) => rules.slice(strict).every((rule) => rule(question)));
		if (left.length === 0) continue;
		// kinds come by their weights; then the topic least asked so far; then the question nearest to how hard it should be
		const kinds = [...new Set(left.map(({ kind }) => kind))].sort();
		const turn = (one: QuestionKind) => (count(one) + random()) / WEIGHT[one];
		const kind = kinds.map((one) => ({ one, turn: turn(one) })).sort((a, b) => a.turn - b.turn)[0].one;
		const topics = round.map(({ topic }) => topic);
		const used = (topic: string) => topics.filter((one) => one === topic).length;
		const those = left.filter((one) => one.kind === kind);
		const fewest = Math.min(...those.map(({ topic }) => used(topic)));
		return those
			.filter(({ topic }) => used(topic) === fewest)
			.map((question) => ({
				question,
				off: Math.abs((question.difficulty ?? wanted) - wanted) + 0.2 * random(),
			}))
			.sort((a, b) => a.off - b.off)[0].question;
	}
	return null;
}

/** The tooth that a question is about. */
function hero({ teeth, options, id }: Question): string {
	const right = options.find((option) => option.right);
	if (right?.label.kind === 'tooth') return right.label.tooth;
	return teeth[0] ?? id;
}

/** Right answers stand at each place equally often, as far as the round's length allows. */
function balanced(round: readonly Question[], random: Random): Question[] {
	const free = round.filter(isFree);
	const deck = shuffled(
		free.map((_, i) => i),
		random,
	);
	// where the count does not come out even, the place that is left over is another in each round
	const start = Math.floor(random() * 12);
	let dealt = 0;
	return round.map((question) => {
		if (!isFree(question)) return question;
		const place = (deck[dealt] + start) % question.options.length;
		dealt += 1;
		const right = question.options.find((option) => option.right);
		const wrong = question.options.filter((option) => !option.right);
		if (!right) return question;
		const options = [...wrong.slice(0, place), right, ...wrong.slice(place)];
		if (right.label.kind !== 'tooth') return { ...question, options };
		const teeth = options.map(({ id }) => id);
		return { ...question, options, teeth, evidence: { ...question.evidence, teeth } };
	});
}

const isFree = ({ kind, options }: Question): boolean =>
	FREE.includes(kind) && options.some(({ right }) => right);
