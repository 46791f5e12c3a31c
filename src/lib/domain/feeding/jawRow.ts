import { monotoneCurve } from '../tooth/smooth';
import type { ToothForm } from '../tooth/form';
import { limitTraits, type CrownTraits } from './crownTraits';
import { formFromTraits } from './formFromTraits';
import type { Thresholds } from './thresholds';

/** What is told of one place along the jaw; between places the numbers run smoothly. */
export interface JawStop {
	/** along the tooth row: 0 front .. 1 back */
	at: number;
	crownHeight_mm: number;
	traits: CrownTraits;
}

export interface JawGradient {
	/** by rising `at`, two at least, the first at 0 and the last at 1 */
	stops: readonly JawStop[];
	/** teeth in the row */
	teeth: number;
}

/** Height and traits at a place along the jaw, 0 front .. 1 back. */
export function jawAt({ stops }: JawGradient, at: number): Omit<JawStop, 'at'> {
	const xs = stops.map((stop) => stop.at);
	const along = (read: (stop: JawStop) => number): number => monotoneCurve(xs, stops.map(read))(at);
	const traits = Object.fromEntries(
		(Object.keys(stops[0].traits) as (keyof CrownTraits)[]).map((key) => [
			key,
			along((stop) => stop.traits[key]),
		]),
	) as unknown as CrownTraits;
	return { crownHeight_mm: along((stop) => stop.crownHeight_mm), traits: limitTraits(traits) };
}

/** Form of the tooth at a place along the jaw. */
export function jawFormAt(gradient: JawGradient, at: number, thresholds: Thresholds): ToothForm {
	const { crownHeight_mm, traits } = jawAt(gradient, at);
	return formFromTraits(traits, crownHeight_mm, thresholds);
}

export interface RowTooth extends Omit<JawStop, 'at'> {
	/** from 0 at the front */
	index: number;
	at: number;
	form: ToothForm;
}

/** Every tooth of the row, front to back, evenly spread. */
export function jawRow(gradient: JawGradient, thresholds: Thresholds): RowTooth[] {
	return Array.from({ length: gradient.teeth }, (_, index) => {
		const at = gradient.teeth === 1 ? 0 : index / (gradient.teeth - 1);
		return { index, at, ...jawAt(gradient, at), form: jawFormAt(gradient, at, thresholds) };
	});
}
