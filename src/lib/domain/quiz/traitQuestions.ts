import { apart } from '../compare/apart';
import { sayValue, type Message } from '../compare/sayTrait';
import { TRAIT_IDS, TRAITS } from '../compare/traits';
import { ASKINGS, marginOf, type Asking } from './askable';
import { hardness } from './hardness';
import type { AgeBand, Question, QuizTooth } from './question';
import { shuffled, type Random } from './seeded';

/** distractors are drawn from this many of the likeliest; ours */
const CHOICE = 4;

/**
 * "Which tooth ...?" with three teeth, one right. Distractors differ in the trait asked for by the full margin and are
 * otherwise as like the right tooth as the exhibit allows, so that nothing else gives the answer away.
 */
export function traitQuestions(teeth: readonly QuizTooth[], band: AgeBand, random: Random): Question[] {
	return ASKINGS.filter(({ bands }) => bands.includes(band)).flatMap((asking) =>
		teeth.flatMap((right) => {
			const question = traitQuestion(asking, right, teeth, random);
			return question ? [question] : [];
		}),
	);
}

function traitQuestion(
	asking: Asking,
	right: QuizTooth,
	teeth: readonly QuizTooth[],
	random: Random,
): Question | null {
	const { trait, by } = asking;
	const others = rivals(asking, right, teeth);
	if (others.length < 2) return null;
	const chosen = shuffled(others.slice(0, CHOICE), random).slice(0, 2);
	const margin = Math.min(...chosen.map((one) => one.margin));
	const shown = shuffled([right, ...chosen.map(({ tooth }) => tooth)], random);
	const way = by.kind === 'is' ? `${snake(trait)}_${by.value}` : `${snake(trait)}_${by.kind}`;
	return {
		id: `choose-${trait}-${by.kind === 'is' ? by.value : by.kind}-${right.id}`.toLowerCase(),
		kind: 'choose',
		topic: trait,
		ask: { key: `quiz_ask_${way}`, values: {} },
		hint: { key: `quiz_hint_${snake(trait)}`, values: {} },
		teeth: shown.map(({ id }) => id),
		options: shown.map((tooth) => ({
			id: tooth.id,
			label: { kind: 'tooth', tooth: tooth.id },
			right: tooth === right,
			why: whyValue(tooth, right, asking),
		})),
		task: { kind: 'pick' },
		because: { key: `quiz_because_${way}`, values: sayValue(right.traits[trait]).values },
		evidence: { view: right.views[trait], teeth: shown.map(({ id }) => id) },
		margin,
		difficulty: hardness(asking.hard, margin),
	};
}

interface Rival {
	tooth: QuizTooth;
	margin: number;
}

const known = new WeakMap<readonly QuizTooth[], Map<string, Rival[]>>();

/**
 * Teeth that are surely not the answer, those most like the right one in everything else first. Kept for as long as the
 * array of teeth lives: it is the same for every seed.
 */
function rivals(asking: Asking, right: QuizTooth, teeth: readonly QuizTooth[]): readonly Rival[] {
	const { trait, by } = asking;
	const kept = known.get(teeth) ?? new Map<string, Rival[]>();
	known.set(teeth, kept);
	const key = `${trait} ${by.kind} ${by.kind === 'is' ? by.value : ''} ${right.id}`;
	const found = kept.get(key);
	if (found) return found;
	const list = teeth
		.filter(({ id }) => id !== right.id)
		.map((tooth) => ({ tooth, margin: marginOf(asking, right.traits[trait], tooth.traits[trait]) }))
		.filter((one): one is Rival => one.margin !== null && one.margin >= 1)
		.map((one) => ({ ...one, unlike: unlike(right, one.tooth, trait) }))
		.sort((a, b) => a.unlike - b.unlike || (a.tooth.id < b.tooth.id ? -1 : 1));
	kept.set(key, list);
	return list;
}

/** Why a tooth is the one or is not: its own value, beside the right one's. */
function whyValue(tooth: QuizTooth, right: QuizTooth, { trait }: Asking): Message {
	const own = sayValue(tooth.traits[trait]).values.value;
	const key = `quiz_why_${snake(trait)}${tooth === right ? '_right' : ''}`;
	return { key, values: { value: own, right: sayValue(right.traits[trait]).values.value } };
}

/** How much two teeth differ in everything but one trait, summed over traits that both show; ours. */
function unlike(a: QuizTooth, b: QuizTooth, except: string): number {
	let sum = 0;
	let known = 0;
	for (const id of TRAIT_IDS) {
		if (id === except) continue;
		const kind = TRAITS[id];
		const distance = apart(a.traits[id], b.traits[id], kind.kind === 'number' ? kind.spread : 1);
		if (distance === null) continue;
		sum += kind.prior * distance;
		known += kind.prior;
	}
	return known === 0 ? 1 : sum / known;
}

export const snake = (id: string): string => id.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
