import { createContext } from 'svelte';
import { placed } from './placed';
import type { Stage } from '../stage/api';

/**
 * waiting  the canvas or the code is not there yet
 * ready    shapes can be shown
 * lost     WebGL went away and may come back
 * none     this browser has no WebGL2: pictures stand in
 */
export type StageState = 'waiting' | 'ready' | 'lost' | 'none';

/** Keeps the page's one stage, from first need to the end of the page. */
export class StageHost {
	state = $state<StageState>('waiting');
	stage = $state.raw<Stage | null>(null);
	#canvas: HTMLCanvasElement | null = null;
	#wanted = false;
	#started = false;
	#reducedMotion: () => boolean;

	/** `reducedMotion` is asked when the stage is made; later changes are the stage's `setReducedMotion`. */
	constructor(reducedMotion: () => boolean) {
		this.#reducedMotion = reducedMotion;
	}

	/** Gives the canvas that covers the window. */
	attach(canvas: HTMLCanvasElement): void {
		this.#canvas = canvas;
		if (this.#wanted) void this.#start();
	}

	/** Loads three.js and the stage in the background; calling it again does nothing. */
	want(): void {
		this.#wanted = true;
		if (this.#canvas) void this.#start();
	}

	async #start(): Promise<void> {
		if (this.#started || !this.#canvas) return;
		this.#started = true;
		const { createStage } = await import('../stage/stage');
		try {
			this.stage = createStage(this.#canvas, {
				reducedMotion: this.#reducedMotion(),
				place: placed,
				onContext: (state) => (this.state = state === 'lost' ? 'lost' : 'ready'),
			});
			this.state = 'ready';
			const stage = this.stage;
			// what the benches and browser tests read; nothing on the page uses it
			window.toothTable = { stats: () => stage.stats() };
		} catch (error) {
			if (!(error instanceof Error) || error.name !== 'NoWebGL') throw error;
			this.state = 'none';
		}
	}
}

export const [getStageHost, setStageHost] = createContext<StageHost>();
