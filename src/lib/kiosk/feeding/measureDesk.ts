import type { CrownMeasures } from '../../domain/measure/crownMeasures';
import type { GridTooth } from '../../domain/tooth/sculptGrid';
import type { MeasureAnswer, MeasureAsk } from '../../workers/measureTooth.worker';

/** Measuring takes a processor of its own for a moment: not more often than this. */
const PAUSE_ms = 220;

/** Has teeth measured in a worker: one at a time, and of those that wait only the newest. */
export class MeasureDesk {
	#worker: Worker;
	#asked = 0;
	#busy = false;
	#timer: ReturnType<typeof setTimeout> | undefined;
	#next: GridTooth | null = null;

	constructor(onmeasured: (measures: CrownMeasures) => void) {
		this.#worker = new Worker(new URL('../../workers/measureTooth.worker.ts', import.meta.url), {
			type: 'module',
		});
		this.#worker.addEventListener('message', ({ data }: MessageEvent<MeasureAnswer>) => {
			if (data.measures) onmeasured(data.measures);
			this.#timer = setTimeout(() => {
				this.#busy = false;
				const next = this.#next;
				this.#next = null;
				if (next) this.ask(next);
			}, PAUSE_ms);
		});
	}

	ask(tooth: GridTooth): void {
		if (this.#busy) {
			this.#next = tooth;
			return;
		}
		this.#busy = true;
		const { mesh, marks } = tooth;
		this.#worker.postMessage({ id: ++this.#asked, mesh, marks } satisfies MeasureAsk);
	}

	close(): void {
		clearTimeout(this.#timer);
		this.#worker.terminate();
	}
}
