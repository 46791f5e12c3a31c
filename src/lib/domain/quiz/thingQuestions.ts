import type { Message } from '../compare/sayTrait';
import { hardness } from './hardness';
import { degreesApart, touchesOne } from './judge';
import {
	CORNERS,
	JAW_PLACES,
	PART_KINDS,
	VERDICTS,
	type AgeBand,
	type Claim,
	type Corner,
	type Option,
	type OwnQuestion,
	type PartKind,
	type Question,
	type QuizPrey,
	type QuizTooth,
	type TouchPart,
} from './question';
import { shuffled, type Random } from './seeded';

/** a tooth is asked about in the triangle only where its best corner leads the next by this share; ours */
export const FEEDING_LEAD = 0.2;
/** a part is not put beside another one that lies nearer than this to it: crown heights and degrees; ours */
const APART = { at: 0.25, deg: 60 };

const say = (key: string, values: Message['values'] = {}): Message => ({ key, values });

/** "Touch the ...": anything of that kind is right; three pins are the other way to answer. */
export function touchQuestions(teeth: readonly QuizTooth[], band: AgeBand, random: Random): Question[] {
	const kinds: readonly PartKind[] = band === '5-7' ? ['tip', 'root', 'pit'] : PART_KINDS;
	return teeth.flatMap((tooth) =>
		kinds.flatMap((target) => {
			const right = tooth.parts.find(({ kind }) => kind === target);
			if (!right) return [];
			const wrong = wrongPlaces(tooth, target, random);
			if (wrong.length < 2) return [];
			const options = shuffled([{ part: right, right: true }, ...wrong.slice(0, 2)], random);
			return [
				{
					id: `touch-${target}-${tooth.id}`,
					kind: 'touch' as const,
					topic: `part-${target}`,
					ask: say(`quiz_touch_${target}`),
					hint: say(`quiz_hint_part_${target}`),
					teeth: [tooth.id],
					options: options.map(({ part, right: isRight }, place): Option => ({
						id: isRight ? 'right' : `${foundIn(part, tooth)}-${place}`,
						label: { kind: 'part', part },
						right: isRight,
						why: isRight
							? say(`quiz_part_is_${target}`)
							: say(`quiz_part_not`, { found: foundIn(part, tooth), wanted: target }),
					})),
					task: { kind: 'touch' as const, target },
					because: say(`quiz_because_part_${target}`),
					evidence: { view: 'labial' as const, teeth: [tooth.id], part: right },
					margin: 1,
					difficulty: hardness(target === 'tip' || target === 'root' ? 0 : 0.5, 1.5),
				},
			];
		}),
	);
}

/** What a wrong pin stands on: a part, or the plain side of the crown. */
const foundIn = (part: TouchPart, tooth: QuizTooth): string =>
	tooth.parts.includes(part) ? part.kind : 'side';

/** Places that are clearly not a part of that kind: other parts first, then the plain crown. */
function wrongPlaces(
	tooth: QuizTooth,
	target: PartKind,
	random: Random,
): { part: TouchPart; right: false }[] {
	const targets = tooth.parts.filter(({ kind }) => kind === target);
	const plain = [0.3, 0.55].flatMap((at) =>
		[0, 45, 90, 135, 180, 225, 270, 315].map((where_deg): TouchPart => ({ kind: target, at, where_deg })),
	);
	const free = plain.filter((place) => tooth.parts.every((part) => clear(place, part)));
	const pool = [
		...shuffled(
			tooth.parts.filter(({ kind }) => kind !== target),
			random,
		),
		...shuffled(free, random),
	];
	const chosen: TouchPart[] = [];
	for (const place of pool)
		if (
			!touchesOne(target, place, tooth) &&
			targets.every((part) => clear(place, part)) &&
			chosen.every((other) => clear(place, other))
		)
			chosen.push(place);
	return chosen.map((part) => ({ part, right: false }));
}

/** Whether two places are clearly two. */
export function clear(a: TouchPart, b: TouchPart): boolean {
	const [low, high] = [Math.max(a.from ?? a.at, b.from ?? b.at), Math.min(a.to ?? a.at, b.to ?? b.at)];
	const rise = low - high;
	const turn = degreesApart(a.where_deg, b.where_deg);
	// near the tip all sides meet
	const tip = Math.max(a.at, b.at) > 0.9;
	return rise >= APART.at || (!tip && turn >= APART.deg && rise > -1);
}

/** The tooth in the triangle: the three corners. */
export function placeQuestions(teeth: readonly QuizTooth[]): Question[] {
	return teeth.flatMap((tooth) => {
		const best = leadingCorner(tooth);
		if (!best) return [];
		return [
			{
				id: `place-${tooth.id}`,
				kind: 'place' as const,
				topic: 'feeding',
				ask: say('quiz_ask_place'),
				hint: say('quiz_hint_place'),
				teeth: [tooth.id],
				options: CORNERS.map((corner): Option => ({
					id: corner,
					label: { kind: 'word', message: say(`quiz_corner_${corner}`) },
					right: corner === best.corner,
					why: say(`quiz_why_place_${corner}`, {
						right: best.corner,
						is: corner === best.corner ? 'yes' : 'no',
					}),
				})),
				task: { kind: 'place' as const, corner: best.corner },
				because: say(`quiz_because_place_${best.corner}`),
				evidence: {
					view: best.corner === 'cut' ? ('apical' as const) : ('labial' as const),
					teeth: [tooth.id],
				},
				margin: best.lead / FEEDING_LEAD,
				difficulty: hardness(0.4, best.lead / FEEDING_LEAD),
			},
		];
	});
}

/** The corner that a tooth's measures speak for most, where they do so clearly. */
export function leadingCorner({ feeding }: QuizTooth): { corner: Corner; lead: number } | null {
	if (!feeding) return null;
	const ranked = [...CORNERS].sort((a, b) => feeding[b] - feeding[a]);
	const lead = feeding[ranked[0]] - feeding[ranked[1]];
	return lead >= FEEDING_LEAD ? { corner: ranked[0], lead } : null;
}

/** One tooth, three prey, one for each corner. */
export function matchQuestions(
	teeth: readonly QuizTooth[],
	preys: readonly QuizPrey[],
	random: Random,
): Question[] {
	const of = (corner: Corner) => preys.filter((prey) => prey.corner === corner);
	if (CORNERS.some((corner) => of(corner).length === 0)) return [];
	return teeth.flatMap((tooth) => {
		const best = leadingCorner(tooth);
		if (!best) return [];
		const shown = shuffled(
			CORNERS.map((corner) => shuffled(of(corner), random)[0]),
			random,
		);
		const right = shown.find(({ corner }) => corner === best.corner);
		if (!right) return [];
		return [
			{
				id: `match-${tooth.id}`,
				kind: 'match' as const,
				topic: 'feeding',
				ask: say('quiz_ask_match'),
				hint: say('quiz_hint_place'),
				teeth: [tooth.id],
				options: shown.map((prey): Option => ({
					id: prey.id,
					label: { kind: 'word', message: say('quiz_prey', { prey: prey.id }) },
					right: prey === right,
					why: say(`quiz_why_match_${prey.corner}`, {
						right: best.corner,
						is: prey === right ? 'yes' : 'no',
					}),
				})),
				task: { kind: 'pick' as const },
				because: say(`quiz_because_place_${best.corner}`),
				evidence: { view: 'labial' as const, teeth: [tooth.id] },
				margin: best.lead / FEEDING_LEAD,
				difficulty: hardness(0.4, best.lead / FEEDING_LEAD),
			},
		];
	});
}

/** how a tooth came to the drawer, by the state of its root */
const LOST = { resorbed: 'shed', full: 'rooted', open: 'growing' } as const;
const FATES = ['shed', 'rooted', 'growing'] as const;

/** Shed, torn out with its root, or never through the gum: asked only where the root is there to be seen. */
export function shedQuestions(teeth: readonly QuizTooth[]): Question[] {
	return teeth.flatMap((tooth) => {
		const root = tooth.traits.root.value;
		if (root !== 'resorbed' && root !== 'full' && root !== 'open') return [];
		const fate = LOST[root];
		const pit = tooth.parts.find(({ kind }) => kind === (fate === 'shed' ? 'pit' : 'root'));
		return [
			{
				id: `shed-${tooth.id}`,
				kind: 'shed' as const,
				topic: 'root',
				ask: say('quiz_ask_shed'),
				hint: say('quiz_hint_root'),
				teeth: [tooth.id],
				options: FATES.map((one): Option => ({
					id: one,
					label: { kind: 'word', message: say(`quiz_fate_${one}`) },
					right: one === fate,
					why: say(`quiz_why_fate_${one}`, { is: one === fate ? 'yes' : 'no' }),
				})),
				task: { kind: 'pick' as const },
				because: say(`quiz_because_fate_${fate}`),
				evidence: { view: tooth.views.root, teeth: [tooth.id], ...(pit ? { part: pit } : {}) },
				margin: 1,
				difficulty: hardness(0.3, 1.5),
			},
		];
	});
}

/** Front, middle or back of the jaw, where the curator says so. */
export function positionQuestions(teeth: readonly QuizTooth[]): Question[] {
	return teeth.flatMap((tooth) => {
		if (!tooth.jawPlace) return [];
		const right = tooth.jawPlace;
		return [
			{
				id: `position-${tooth.id}`,
				kind: 'position' as const,
				topic: 'position',
				ask: say('quiz_ask_position'),
				hint: say('quiz_hint_position'),
				teeth: [tooth.id],
				options: JAW_PLACES.map((place): Option => ({
					id: place,
					label: { kind: 'word', message: say(`quiz_jaw_${place}`) },
					right: place === right,
					why: say(`quiz_why_jaw_${place}`, { is: place === right ? 'yes' : 'no' }),
				})),
				task: { kind: 'pick' as const },
				because: say(`quiz_because_jaw_${right}`),
				evidence: { view: 'labial' as const, teeth: [tooth.id] },
				margin: 1,
				difficulty: hardness(0.6, 1.5),
			},
		];
	});
}

/** True, not true, or scientists disagree; all words are the curator's. */
export function claimQuestions(claims: readonly Claim[], band: AgeBand): Question[] {
	return claims
		.filter(({ bands }) => bands.includes(band))
		.map((claim) => ({
			id: `claim-${claim.id}`,
			kind: 'claim' as const,
			topic: claim.topic,
			ask: say('quiz_own_ask', { own: claim.id }),
			hint: say('quiz_own_hint', { own: claim.id }),
			teeth: claim.tooth ? [claim.tooth] : [],
			options: VERDICTS.map((verdict): Option => ({
				id: verdict,
				label: { kind: 'word', message: say(`quiz_verdict_${verdict}`) },
				right: verdict === claim.verdict,
				why: say('quiz_own_why', { own: claim.id, option: verdict }),
			})),
			task: { kind: 'pick' as const },
			because: say('quiz_own_because', { own: claim.id }),
			evidence: { view: 'labial' as const, teeth: claim.tooth ? [claim.tooth] : [] },
			margin: 1,
			difficulty: null,
		}));
}

/** A curator's own question among teeth; its teeth are shown in an order that the seed gives. */
export function ownQuestions(
	own: readonly OwnQuestion[],
	teeth: readonly QuizTooth[],
	band: AgeBand,
	random: Random,
): Question[] {
	const known = new Set(teeth.map(({ id }) => id));
	return own
		.filter((one) => one.bands.includes(band) && one.teeth.every((id) => known.has(id)))
		.map((one) => {
			const shown = shuffled(one.teeth, random);
			return {
				id: `own-${one.id}`,
				kind: 'choose' as const,
				topic: one.topic,
				ask: say('quiz_own_ask', { own: one.id }),
				hint: say('quiz_own_hint', { own: one.id }),
				teeth: shown,
				options: shown.map((id): Option => ({
					id,
					label: { kind: 'tooth', tooth: id },
					right: id === one.right,
					why: say('quiz_own_why', { own: one.id, option: id }),
				})),
				task: { kind: 'pick' as const },
				because: say('quiz_own_because', { own: one.id }),
				evidence: { view: 'labial' as const, teeth: shown },
				margin: 1,
				difficulty: null,
			};
		});
}
