import type { FeedingView, NumberView, PreyView } from '../../content/feedingView';
import type { Bite } from '../../domain/feeding/bite';
import type { ValidityNote } from '../../domain/feeding/note';
import type { NumberNote } from '../../kiosk/feeding/noteDesk.svelte';
import type { ScreenText } from '../../kiosk/text.svelte';
import { twoFigures } from './biteAt';

/** A number of a model at the precision that it bears, with its unit. */
export function shownNumber(text: ScreenText, value: number, unit: string): string {
	if (!Number.isFinite(value)) return '–';
	const rounded = twoFigures(value);
	return `${text.number(rounded, rounded < 1 ? 2 : rounded < 10 ? 1 : 0)} ${unit}`;
}

/** Where the model ends, in words; each kind once, with the materials that it is about. */
export function caveats(text: ScreenText, notes: readonly ValidityNote[], prey: PreyView | null): string[] {
	const codes = [...new Set(notes.map(({ code }) => code))];
	return codes.map((code) => {
		const about = notes
			.filter((note) => note.code === code && note.about)
			.map((note) => prey?.layers.find(({ material }) => material.id === note.about)?.material.name)
			.filter((name) => name !== undefined);
		const words = text.say(`feed_note_${code}`);
		return about.length ? `${words} (${[...new Set(about)].join(', ')})` : words;
	});
}

const input = (text: ScreenText, name: string, number: NumberView, unit: string) => ({
	name,
	shown:
		number.low !== null && number.high !== null
			? `${text.number(number.value, decimals(number.value))} ${unit} (${text.number(number.low, decimals(number.low))}–${text.number(number.high, decimals(number.high))})`
			: `${text.number(number.value, decimals(number.value))} ${unit}`,
	citation: number.source,
	recalled: number.recalled,
});
const decimals = (value: number): number => (value === 0 || value >= 100 ? 0 : value >= 1 ? 1 : 3);

/** What stands behind each number of a bite. */
export function biteNotes(
	text: ScreenText,
	feeding: FeedingView,
	prey: PreyView,
	bite: Bite,
	shown: { force_N: number; stress_MPa: number },
): Record<'force' | 'stress' | 'breaks' | 'safety', NumberNote> {
	const limits = caveats(text, bite.notes, prey);
	const layers = prey.layers.flatMap(({ material, thickness }) => [
		input(text, text.say('feed_input_resists', { name: material.name }), material.numbers.resists_MPa, 'MPa'),
		input(text, text.say('feed_input_thick', { name: material.name }), thickness, 'mm'),
	]);
	const { strength_MPa } = feeding.crown.numbers;
	const strength = input(text, text.say('feed_input_strength'), strength_MPa, 'MPa');
	const note = (key: string, value: string, inputs: NumberNote['inputs']): NumberNote => ({
		title: text.say(`feed_number_${key}`),
		shown: value,
		how: text.say(`feed_how_${key}`),
		inputs,
		citations: key === 'force' ? prey.sourceCitations : [],
		caveats: limits,
	});
	return {
		force: note('force', shownNumber(text, shown.force_N, 'N'), layers),
		stress: note('stress', shownNumber(text, shown.stress_MPa, 'MPa'), [strength]),
		breaks: note('breaks', shownNumber(text, bite.breaking.force_N, 'N'), [strength]),
		safety: note('safety', shownNumber(text, bite.safety, '×'), [strength]),
	};
}
