import { createContext } from 'svelte';

export const TEXT_SIZES = ['usual', 'larger', 'largest'] as const;
export type TextSize = (typeof TEXT_SIZES)[number];

/** How many times as large as usual the text is; 2 is what WCAG 2.2, 1.4.4, asks for. */
export const TEXT_SCALE: Readonly<Record<TextSize, number>> = { usual: 1, larger: 1.5, largest: 2 };

/** Loudness in steps, 1 .. LOUDEST. */
export const LOUDEST = 5;
const USUAL_VOLUME = 3;

/**
 * Factor on the sound's amplitude for a step of loudness: 5 dB a step, so that the steps span 20 dB.
 * EN 301 549, 8.2.1.1, asks for a range of at least 18 dB for speech.
 */
export const gainAt = (volume: number): number => 10 ** ((volume - LOUDEST) / 4);

interface Kept {
	textSize: TextSize;
	/** null = as the system says */
	highContrast: boolean | null;
	/** null = as the system says */
	reducedMotion: boolean | null;
	/** null = as the screen stands */
	lowReach: boolean | null;
	sound: boolean;
	volume: number;
}

const USUAL: Kept = {
	textSize: 'usual',
	highContrast: null,
	reducedMotion: null,
	lowReach: null,
	sound: true,
	volume: USUAL_VOLUME,
};

/** What the visitor's device itself asks for, and how the screen was set up; read anew each time, and reactive where the caller's is. */
export interface SystemWishes {
	highContrast: () => boolean;
	reducedMotion: () => boolean;
	/** whether visits on this screen begin with the low layout; left out = no */
	lowReach?: () => boolean;
	/** loudest amplitude of this screen, 0 .. 1; left out = 1 */
	gain?: () => number;
}

const KEY = 'tooth-table-comfort';

/** How this visitor sees, hears and reaches the screen. Kept for the visit; `reset` ends it. */
export class Comfort {
	/** whether the panel that changes all this is open */
	open = $state(false);
	#kept = $state<Kept>({ ...USUAL });
	#system: SystemWishes;
	#store: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | null;

	/** `store` null keeps nothing beyond this page (on the server, or where the browser refuses). */
	constructor(system: SystemWishes, store: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> | null) {
		this.#system = system;
		this.#store = store;
		this.#kept = { ...USUAL, ...readKept(store) };
	}

	get textSize(): TextSize {
		return this.#kept.textSize;
	}
	set textSize(value: TextSize) {
		this.#change({ textSize: value });
	}

	get highContrast(): boolean {
		return this.#kept.highContrast ?? this.#system.highContrast();
	}
	set highContrast(value: boolean) {
		this.#change({ highContrast: value });
	}

	/** Nothing glides, spins or eases while this is true. */
	get reducedMotion(): boolean {
		return this.#kept.reducedMotion ?? this.#system.reducedMotion();
	}
	set reducedMotion(value: boolean) {
		this.#change({ reducedMotion: value });
	}

	/** All controls in the lower part of the screen. */
	get lowReach(): boolean {
		return this.#kept.lowReach ?? this.#usualReach;
	}
	set lowReach(value: boolean) {
		this.#change({ lowReach: value === this.#usualReach ? null : value });
	}

	get sound(): boolean {
		return this.#kept.sound;
	}
	set sound(value: boolean) {
		this.#change({ sound: value });
	}

	/** step of loudness, 1 .. LOUDEST; others are clamped */
	get volume(): number {
		return this.#kept.volume;
	}
	set volume(value: number) {
		this.#change({ volume: Math.min(LOUDEST, Math.max(1, Math.round(value))) });
	}

	/** factor on the amplitude of any sound, 0 .. 1 */
	get gain(): number {
		return this.sound ? gainAt(this.volume) * this.#screenGain : 0;
	}

	/** this screen makes no sound, whatever anybody chooses */
	get silent(): boolean {
		return this.#screenGain === 0;
	}

	get #usualReach(): boolean {
		return this.#system.lowReach?.() ?? false;
	}
	get #screenGain(): number {
		return this.#system.gain?.() ?? 1;
	}

	/** nothing has been set on this visit, and the panel is shut */
	get untouched(): boolean {
		const kept = this.#kept;
		return !this.open && (Object.keys(USUAL) as (keyof Kept)[]).every((key) => kept[key] === USUAL[key]);
	}

	/** The next visitor begins as if nobody had been here. */
	reset(): void {
		this.open = false;
		this.#kept = { ...USUAL };
		try {
			this.#store?.removeItem(KEY);
		} catch {
			// nothing was kept
		}
	}

	#change(part: Partial<Kept>): void {
		this.#kept = { ...this.#kept, ...part };
		try {
			this.#store?.setItem(KEY, JSON.stringify(this.#kept));
		} catch {
			// a full or forbidden store: the choice still holds on this page
		}
	}
}

/** What was kept before on this visit; anything strange in the store counts as nothing. */
function readKept(store: Pick<Storage, 'getItem'> | null): Partial<Kept> {
	let found: unknown;
	try {
		found = JSON.parse(store?.getItem(KEY) ?? 'null');
	} catch {
		return {};
	}
	if (typeof found !== 'object' || found === null) return {};
	const { textSize, highContrast, reducedMotion, lowReach, sound, volume } = found as Record<string, unknown>;
	const kept: Partial<Kept> = {};
	if (TEXT_SIZES.includes(textSize as TextSize)) kept.textSize = textSize as TextSize;
	if (typeof highContrast === 'boolean') kept.highContrast = highContrast;
	if (typeof reducedMotion === 'boolean') kept.reducedMotion = reducedMotion;
	if (typeof lowReach === 'boolean') kept.lowReach = lowReach;
	if (typeof sound === 'boolean') kept.sound = sound;
	if (Number.isInteger(volume) && (volume as number) >= 1 && (volume as number) <= LOUDEST)
		kept.volume = volume as number;
	return kept;
}

export const [getComfort, setComfort] = createContext<Comfort>();
