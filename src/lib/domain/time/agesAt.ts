import { STAGES, type Stage } from './stages';

/**
 * The named ages that a span of time reaches into, oldest first; ages in millions of years ago.
 * A span that only touches a boundary does not reach into the age beyond it. Of a single moment, the age that it
 * lies in (a boundary belongs to the younger side, whose base it is). Empty for what is older than the chart, or
 * for a span the wrong way round or not a number.
 */
export function agesAt(oldest_Ma: number, youngest_Ma: number): Stage[] {
	if (!(oldest_Ma >= youngest_Ma) || !(youngest_Ma >= 0)) return [];
	if (oldest_Ma === youngest_Ma) {
		const at = oldest_Ma;
		return STAGES.filter(
			({ base_Ma, top_Ma }) => at <= base_Ma && (at > top_Ma || (at === 0 && top_Ma === 0)),
		);
	}
	return STAGES.filter(({ base_Ma, top_Ma }) => oldest_Ma > top_Ma && youngest_Ma < base_Ma);
}
