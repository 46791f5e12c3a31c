import { sayValue, type Message } from '../compare/sayTrait';
import { TRAITS, type TraitId } from '../compare/traits';
import { LEAD } from './askable';
import { hardness } from './hardness';
import type { AgeBand, Option, Question, QuizTooth } from './question';
import { shuffled, type Random } from './seeded';
import { snake } from './traitQuestions';

const say = (key: string, values: Message['values'] = {}): Message => ({ key, values });

const ORDERED: Readonly<Record<AgeBand, readonly TraitId[]>> = {
	'5-7': ['size'],
	'7-11': ['size', 'slenderness', 'wear'],
	'11-14': ['slenderness', 'wear', 'curvature'],
};

/** stages of a tooth's life that its root tells, first to last */
const LIFE = ['open', 'full', 'resorbed'] as const;

/** Three teeth in order: least to most of a trait, or youngest to oldest. Neighbours lie apart by the full margin. */
export function orderQuestions(teeth: readonly QuizTooth[], band: AgeBand, random: Random): Question[] {
	const byTrait = ORDERED[band].flatMap((trait) =>
		teeth.flatMap((start) => {
			const three = spaced(trait, start, teeth, random);
			return three ? [orderQuestion(trait, three.teeth, three.margin, random)] : [];
		}),
	);
	const life = band === '5-7' ? null : lifeOrder(teeth, random);
	return life ? [...byTrait, life] : byTrait;
}

function scaledValue(trait: TraitId, tooth: QuizTooth): number | null {
	const kind = TRAITS[trait];
	const { value } = tooth.traits[trait];
	if (value === null || kind.kind !== 'number') return null;
	const number = kind.scale === 'log' ? Math.log(Number(value)) : Number(value);
	return Number.isFinite(number) ? number : null;
}

/** Three teeth from `start` upwards, each apart from the one before by at least the lead. */
function spaced(
	trait: TraitId,
	start: QuizTooth,
	teeth: readonly QuizTooth[],
	random: Random,
): { teeth: QuizTooth[]; margin: number } | null {
	const kind = TRAITS[trait];
	if (kind.kind !== 'number') return null;
	const step = LEAD * kind.precision;
	const ranked = teeth
		.map((tooth) => ({ tooth, value: scaledValue(trait, tooth) }))
		.filter((one): one is { tooth: QuizTooth; value: number } => one.value !== null)
		.sort((a, b) => a.value - b.value || (a.tooth.id < b.tooth.id ? -1 : 1));
	const chosen = [{ tooth: start, value: scaledValue(trait, start) ?? NaN }];
	if (Number.isNaN(chosen[0].value)) return null;
	while (chosen.length < 3) {
		const last = chosen[chosen.length - 1].value;
		const next = ranked.filter(({ value }) => value - last >= step);
		if (next.length === 0) return null;
		// of the next few one at random, leaving room for those to come
		chosen.push(shuffled(next.slice(0, 3), random)[0]);
	}
	const margin = Math.min(chosen[1].value - chosen[0].value, chosen[2].value - chosen[1].value) / step;
	return { teeth: chosen.map(({ tooth }) => tooth), margin };
}

function orderQuestion(
	trait: TraitId,
	right: readonly QuizTooth[],
	margin: number,
	random: Random,
): Question {
	const shown = shuffled(right, random);
	return {
		id: `order-${trait}-${right.map(({ id }) => id).join('-')}`.toLowerCase(),
		kind: 'order',
		topic: trait,
		ask: say(`quiz_order_${snake(trait)}`),
		hint: say(`quiz_hint_${snake(trait)}`),
		teeth: shown.map(({ id }) => id),
		options: shown.map((tooth): Option => ({
			id: tooth.id,
			label: { kind: 'tooth', tooth: tooth.id },
			right: false,
			why: say(`quiz_order_why_${snake(trait)}`, {
				value: sayValue(tooth.traits[trait]).values.value,
				place: right.indexOf(tooth) + 1,
			}),
		})),
		task: { kind: 'order', right: right.map(({ id }) => id) },
		because: say(`quiz_order_because_${snake(trait)}`),
		evidence: { view: right[0].views[trait], teeth: shown.map(({ id }) => id) },
		margin,
		difficulty: hardness(0.5, margin),
	};
}

/** Germ, whole tooth, shed crown. */
function lifeOrder(teeth: readonly QuizTooth[], random: Random): Question | null {
	const right = LIFE.map(
		(root) =>
			shuffled(
				teeth.filter(({ traits }) => traits.root.value === root),
				random,
			)[0],
	);
	if (right.some((tooth) => tooth === undefined)) return null;
	const shown = shuffled(right, random);
	return {
		id: `order-life-${right.map(({ id }) => id).join('-')}`,
		kind: 'order',
		topic: 'root',
		ask: say('quiz_order_life'),
		hint: say('quiz_hint_root'),
		teeth: shown.map(({ id }) => id),
		options: shown.map((tooth): Option => ({
			id: tooth.id,
			label: { kind: 'tooth', tooth: tooth.id },
			right: false,
			why: say('quiz_order_why_life', {
				value: String(tooth.traits.root.value),
				place: right.indexOf(tooth) + 1,
			}),
		})),
		task: { kind: 'order', right: right.map(({ id }) => id) },
		because: say('quiz_order_because_life'),
		evidence: { view: 'basal', teeth: shown.map(({ id }) => id) },
		margin: 1,
		difficulty: hardness(0.5, 1.5),
	};
}

/** a reading is right within this share of the measured value, but never less than half a millimetre; ours */
const TOLERANCE: Readonly<Record<AgeBand, number>> = { '5-7': 0.15, '7-11': 0.12, '11-14': 0.08 };
/** readings offered for choosing lie at these shares of the true one, two of them beside it; all far outside the tolerance */
const READINGS = [0.5, 0.65, 1.45, 1.8] as const;

/** Measure the crown from tip to base with the caliper; three readings are the other way to answer. */
export function caliperQuestions(teeth: readonly QuizTooth[], band: AgeBand, random: Random): Question[] {
	if (band === '5-7') return [];
	return teeth
		.filter(({ traits }) => traits.tipWorn.value === false && traits.size.value !== null)
		.map((tooth) => {
			const right_mm = tooth.crownHeight_mm;
			const wrong = shuffled(READINGS, random)
				.slice(0, 2)
				.map((share) => right_mm * share);
			const shown = shuffled([right_mm, ...wrong], random);
			return {
				id: `caliper-${tooth.id}`,
				kind: 'caliper' as const,
				topic: 'measuring',
				ask: say('quiz_ask_caliper'),
				hint: say('quiz_hint_caliper'),
				teeth: [tooth.id],
				options: shown.map((mm): Option => ({
					id:
						mm === right_mm
							? 'right'
							: mm < right_mm
								? `short-${Math.round((mm / right_mm) * 100)}`
								: `long-${Math.round((mm / right_mm) * 100)}`,
					label: { kind: 'word', message: say('quiz_reading', { mm }) },
					right: mm === right_mm,
					why: say(
						mm === right_mm
							? 'quiz_caliper_right'
							: mm < right_mm
								? 'quiz_caliper_short'
								: 'quiz_caliper_long',
						{ mm, right: right_mm },
					),
				})),
				task: {
					kind: 'caliper' as const,
					right_mm,
					within_mm: Math.max(0.5, TOLERANCE[band] * right_mm),
				},
				because: say('quiz_because_caliper', { mm: right_mm }),
				evidence: { view: 'labial' as const, teeth: [tooth.id] },
				margin: 1,
				difficulty: hardness(0.5, 1.5),
			};
		})
		.filter(({ task }) =>
			READINGS.every((share) => Math.abs(share - 1) * task.right_mm > 1.5 * task.within_mm),
		);
}
