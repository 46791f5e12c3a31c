import type { TriMesh } from '../../domain/mesh/triMesh';
import type { ToothForm } from '../../domain/tooth/form';
import { Asker } from './asker';

/** Makes teeth in a worker. */
export const sculptor = () =>
	new Asker<{ form: ToothForm }, TriMesh>(
		() => new Worker(new URL('../../workers/sculptTooth.worker.ts', import.meta.url), { type: 'module' }),
	);
