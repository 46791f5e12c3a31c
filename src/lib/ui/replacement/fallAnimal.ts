import type { Range } from '../../domain/replacement/fallCount';
import type { NumberOrigin } from './numberOrigin';

/** An animal whose teeth are counted as they fall. */
export interface FallAnimal {
	id: string;
	name: string;
	/** Latin name; null for none */
	latin: string | null;
	living: boolean;
	/** days from one tooth to the next at one place */
	period_d: Range;
	periodOrigin: NumberOrigin;
	/** of the whole mouth; null where nobody says */
	positions: Range | null;
	positionsOrigin: NumberOrigin | null;
}
