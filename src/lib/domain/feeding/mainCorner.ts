import { CORNERS, type Corner, type Position } from './position';

/** A tooth's largest share is its main use from here on; below, it does several things. Ours. */
export const MAIN_SHARE = 0.45;

/** What a tooth in this place is above all good for; null where no corner stands out. */
export function mainCorner(position: Position): Corner | null {
	const [best] = [...CORNERS].sort((a, b) => position[b] - position[a]);
	return position[best] >= MAIN_SHARE ? best : null;
}
