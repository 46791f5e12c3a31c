import { DAYS_A_YEAR, slowingGenerations } from './shedCounts';

/** A least and a greatest value; equal when only one is known. */
export interface Range {
	from: number;
	to: number;
}

export interface FallSetup {
	/** of the whole mouth */
	positions: Range;
	/** replacement period when counting begins, days */
	period_d: Range;
	/** period at the end, days; absent = it stays as it is */
	lastPeriod_d?: Range;
	years: number;
}

export interface FallCount {
	/** teeth shed: least, middle of all ranges, greatest */
	least: number;
	middle: number;
	most: number;
	/** teeth a year, on average, for the middle */
	perYear: number;
	/** teeth a second, on average, for the middle */
	perSecond: number;
	/** generations at one position, for the middle */
	generations: number;
}

const SECONDS_A_DAY = 86_400;
const middleOf = ({ from, to }: Range): number => (from + to) / 2;

/** How many teeth fall from one mouth in a time, with the spread that the ranges leave. */
export function fallCount({ positions, period_d, lastPeriod_d, years }: FallSetup): FallCount {
	const time_d = years * DAYS_A_YEAR;
	const generations = (first: number, last?: number): number =>
		last === undefined ? time_d / first : slowingGenerations(first, last, time_d);
	const middle = generations(middleOf(period_d), lastPeriod_d && middleOf(lastPeriod_d));
	const teeth = middleOf(positions) * middle;
	return {
		// long periods give few teeth
		least: positions.from * generations(period_d.to, lastPeriod_d?.to),
		middle: teeth,
		most: positions.to * generations(period_d.from, lastPeriod_d?.from),
		perYear: teeth / years,
		perSecond: teeth / (time_d * SECONDS_A_DAY),
		generations: middle,
	};
}
