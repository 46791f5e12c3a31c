import type { StageView } from '../stage/api';
import type { IconName } from './Icon.svelte';

const STEP_DEG = 15;
const ZOOM_STEP = 1.25;

export interface TurnButton {
	icon: IconName;
	/** key of the words of the screen */
	label: string;
	act: () => void;
}

/**
 * Buttons that do what a finger does to a tooth; `setBack` = how it stands again as at first, with its word.
 * `TURN_KEYS` counts on their order.
 */
export const turnButtons = (
	view: () => StageView | null,
	setBack: () => void,
	setBackLabel = 'upright',
): TurnButton[] => [
	{ icon: 'left', label: 'turn_left', act: () => view()?.turnBy(-STEP_DEG, 0) },
	{ icon: 'right', label: 'turn_right', act: () => view()?.turnBy(STEP_DEG, 0) },
	{ icon: 'tiltUp', label: 'tilt_up', act: () => view()?.turnBy(0, STEP_DEG) },
	{ icon: 'tiltDown', label: 'tilt_down', act: () => view()?.turnBy(0, -STEP_DEG) },
	{ icon: 'farther', label: 'farther', act: () => view()?.zoomBy(1 / ZOOM_STEP) },
	{ icon: 'closer', label: 'closer', act: () => view()?.zoomBy(ZOOM_STEP) },
	{ icon: 'upright', label: setBackLabel, act: setBack },
];

/** Keys of a view by the place of their button. */
export const TURN_KEYS: Readonly<Record<string, number>> = {
	ArrowLeft: 0,
	ArrowRight: 1,
	ArrowUp: 2,
	ArrowDown: 3,
	'-': 4,
	'+': 5,
	'=': 5,
	Home: 6,
	'0': 6,
};
