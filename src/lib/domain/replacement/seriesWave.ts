import { SAME_CYCLES } from './jaw';
import { seriesOffset } from './seriesOffset';

/** either = the next tooth of the series comes half a cycle later, so it may be read both ways */
export type WaveDirection = 'front-to-back' | 'back-to-front' | 'together' | 'either';

/** What is seen when every `q`-th tooth is followed. Nothing travels in the jaw: the wave is in the eye. */
export interface SeriesWave {
	/** 1 = every neighbour, 2 = every second tooth (the classic way), 3 = every third */
	q: number;
	/** cycles by which the next tooth of the series behind comes later */
	offset: number;
	direction: WaveDirection;
	/** positions per day, + = towards the back; null when the series erupts together or is read both ways */
	speed_per_d: number | null;
	/** length of a full wave, positions; Infinity when the series erupts together */
	length: number;
	/** teeth of the series in a full wave */
	teeth: number;
}

/** Direction, speed v = q / (d_q T) and wave length L = q / |d_q| of a series; for q = 2, L = 2 z / |z - 2|. */
export function seriesWave(spacing: number, period_d: number, q: number): SeriesWave {
	const offset = seriesOffset(spacing, q);
	const half = Math.abs(Math.abs(offset) - 0.5) < SAME_CYCLES;
	const direction =
		offset === 0 ? 'together' : half ? 'either' : offset > 0 ? 'front-to-back' : 'back-to-front';
	const length = offset === 0 ? Infinity : q / Math.abs(offset);
	return {
		q,
		offset,
		direction,
		speed_per_d: offset === 0 || half ? null : q / (offset * period_d),
		length,
		teeth: length / q,
	};
}
