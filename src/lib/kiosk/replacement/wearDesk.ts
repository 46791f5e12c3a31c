import type { WearAsk, WearResult } from '../../workers/wearTooth.worker';
import { Asker } from './asker';

export type { WearResult };

/** Wears teeth in a worker. */
export const wearDesk = () =>
	new Asker<Omit<WearAsk, 'id'>, WearResult>(
		() => new Worker(new URL('../../workers/wearTooth.worker.ts', import.meta.url), { type: 'module' }),
	);
