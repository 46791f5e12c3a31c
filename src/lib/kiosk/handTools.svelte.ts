import { createContext } from 'svelte';
import type { CaliperReading } from '../domain/measure/caliper';
import type { CutSection } from '../domain/measure/cutSection';
import type { Cut } from '../stage/api';
import { LifeSize } from './lifeSize.svelte';

/** What a visitor can take in hand, one at a time. */
export const HAND_TOOLS = ['cut', 'caliper', 'overlay', 'size'] as const;
export type HandTool = (typeof HAND_TOOLS)[number];

/** A tool as it lies over one tooth; by the key of its place. */
type ByPlace<T> = Record<number, T>;

/** The tools on the table and what they have been set to. */
export class HandTools {
	active = $state<HandTool | null>(null);

	/** all teeth at the same share of the crown's height, or at the same mm above its base */
	cutBy = $state<'share' | 'mm'>('share');
	/** of crown height, below 0 in the root */
	cutShare = $state(0.5);
	cutHeight_mm = $state(5);
	/** the cut of each tooth as last worked out; null where the plane misses */
	sections = $state.raw<ByPlace<CutSection | null>>({});

	/** what each caliper reads; absent until its ends are set */
	readings = $state.raw<ByPlace<CaliperReading>>({});

	/** how large a mm is on this screen */
	readonly lifeSize = new LifeSize();

	get cut(): Cut {
		return this.cutBy === 'share' ? { fraction: this.cutShare } : { height_mm: this.cutHeight_mm };
	}

	/** Takes a tool in hand; the one in hand is laid down again. */
	take(tool: HandTool): void {
		this.active = this.active === tool ? null : tool;
	}

	tellSection(key: number, section: CutSection | null | undefined): void {
		this.sections = told(this.sections, key, section);
	}

	tellReading(key: number, reading: CaliperReading | undefined): void {
		this.readings = told(this.readings, key, reading);
	}
}

function told<T>(before: ByPlace<T>, key: number, value: T | undefined): ByPlace<T> {
	const after = { ...before };
	if (value === undefined) delete after[key];
	else after[key] = value;
	return after;
}

export const [getHandTools, setHandTools] = createContext<HandTools>();
