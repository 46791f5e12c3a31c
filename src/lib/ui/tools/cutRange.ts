/** What the cut's slider needs to know of a tooth. */
interface Tooth {
	shape: { crownHeight_mm: number; bounds: { min: readonly number[] } };
}

export interface CutRange {
	least: number;
	most: number;
	/** one press of a button */
	step: number;
	/** the finest move of the slider */
	fine: number;
}

/** The very ends of a tooth are left out: nothing is to be seen there. */
const END = 0.02;

/** From the lowest root to just under the highest tip; shares of the crown's height, or mm above its base. */
export function cutRange(by: 'share' | 'mm', teeth: readonly Tooth[]): CutRange {
	const roots = teeth.map(({ shape }) => Math.min(0, shape.bounds.min[1]));
	if (by === 'share') {
		const least = Math.min(0, ...teeth.map(({ shape }, i) => roots[i] / shape.crownHeight_mm));
		return { least: Math.ceil((least + END) * 100) / 100, most: 1 - END, step: 0.05, fine: 0.01 };
	}
	const tallest = Math.max(1, ...teeth.map(({ shape }) => shape.crownHeight_mm));
	// whole halves or tenths, so that the numbers stay plain
	const fine = tallest > 30 ? 0.5 : 0.1;
	const whole = (mm: number) => Math.round(mm / fine) * fine;
	return {
		least: whole(Math.min(0, ...roots) + END * tallest),
		most: whole(tallest * (1 - END)),
		step: tallest > 30 ? 2 : tallest > 12 ? 1 : 0.5,
		fine,
	};
}
