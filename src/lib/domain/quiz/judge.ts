import type { Message } from '../compare/sayTrait';
import type { PartKind, Question, QuizTooth, Response, TouchPart } from './question';

export interface Judgement {
	right: boolean;
	/** why it is right, or why it is not */
	why: Message;
	/** the option under which the answer is counted */
	counted: string;
}

/** how far from a marked spot a finger still means it: crown heights and degrees; ours */
const REACH = { at: 0.15, deg: 40, edge_deg: 22 };
/** the tip begins here; roots begin here; fractions of crown height; ours */
const TIP_FROM = 0.85;
const ROOT_UNDER = -0.05;

/** Whether an answer is right, and why. `tooth` is the one on the table, needed for what is touched. */
export function judge(question: Question, response: Response, tooth?: QuizTooth): Judgement {
	switch (response.kind) {
		case 'option': {
			const option = question.options.find(({ id }) => id === response.option);
			if (!option) throw new Error(`judge: ${question.id} has no option ${response.option}`);
			return { right: option.right, why: option.why, counted: option.id };
		}
		case 'order':
			return judgeOrder(question, response.teeth);
		case 'reading':
			return judgeReading(question, response.mm);
		case 'touch':
			return judgeTouch(question, response, tooth);
	}
}

function judgeOrder(question: Question, teeth: readonly string[]): Judgement {
	if (question.task.kind !== 'order') throw new Error(`judge: ${question.id} asks for no order`);
	const { right } = question.task;
	const wrongAt = right.findIndex((id, place) => teeth[place] !== id);
	if (wrongAt < 0 && teeth.length === right.length)
		return { right: true, why: question.because, counted: 'right' };
	// the first tooth that stands wrong says where it belongs
	const misplaced = question.options.find(({ id }) => id === teeth[wrongAt]);
	return { right: false, why: misplaced?.why ?? question.because, counted: `first-wrong-${wrongAt + 1}` };
}

function judgeReading(question: Question, mm: number): Judgement {
	const { task } = question;
	if (task.kind !== 'caliper') throw new Error(`judge: ${question.id} asks for no reading`);
	const off = mm - task.right_mm;
	const values = { mm, right: task.right_mm };
	if (Math.abs(off) <= task.within_mm)
		return { right: true, why: { key: 'quiz_caliper_right', values }, counted: 'right' };
	const way = off < 0 ? 'short' : 'long';
	return { right: false, why: { key: `quiz_caliper_${way}`, values }, counted: way };
}

function judgeTouch(
	question: Question,
	touch: Extract<Response, { kind: 'touch' }>,
	tooth: QuizTooth | undefined,
): Judgement {
	const { task } = question;
	if (task.kind !== 'touch' || !tooth) throw new Error(`judge: ${question.id} cannot be touched`);
	const found = touched(touch, tooth);
	if (found === task.target || touchesOne(task.target, touch, tooth))
		return { right: true, why: { key: `quiz_part_is_${task.target}`, values: {} }, counted: 'right' };
	return {
		right: false,
		why: { key: 'quiz_part_not', values: { found, wanted: task.target } },
		counted: found,
	};
}

/** What a finger is on: the nearest part, or the plain side of the crown or root. */
export function touched(place: { at: number; where_deg: number }, tooth: QuizTooth): PartKind | 'side' {
	if (place.at >= TIP_FROM && tooth.parts.some(({ kind }) => kind === 'tip')) return 'tip';
	const kinds: readonly PartKind[] = ['pit', 'facet', 'carina', 'neck'];
	for (const kind of kinds) if (touchesOne(kind, place, tooth)) return kind;
	return place.at < ROOT_UNDER ? 'root' : 'side';
}

/** Whether a finger is on any part of that kind. */
export function touchesOne(
	kind: PartKind,
	place: { at: number; where_deg: number },
	tooth: QuizTooth,
): boolean {
	if (kind === 'tip') return place.at >= TIP_FROM && tooth.parts.some((part) => part.kind === 'tip');
	const parts = tooth.parts.filter((part) => part.kind === kind);
	if (kind === 'root') return parts.length > 0 && place.at < ROOT_UNDER;
	return parts.some((part) => onPart(part, place));
}

/** Smaller angle between two directions, 0 .. 180 degrees. */
export const degreesApart = (a_deg: number, b_deg: number): number =>
	Math.abs(((((a_deg - b_deg) % 360) + 540) % 360) - 180);

function onPart(part: TouchPart, { at, where_deg }: { at: number; where_deg: number }): boolean {
	const turn = degreesApart(where_deg, part.where_deg);
	if (part.kind === 'carina') return turn <= REACH.edge_deg && at >= (part.from ?? 0) - 0.1 && at <= 1.05;
	const near = Math.abs(at - part.at) <= REACH.at;
	// a neck goes all round; at the tip all sides meet
	return near && (part.kind === 'neck' || part.at > 0.9 || turn <= REACH.deg);
}
